package org.headfall.cli;

import static org.headfall.cli.Answer.headfall;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What {@code capping} and {@code monitor} print of a run. */
class StudiesOfARunTest {

    @TempDir
    Path folder;

    @BeforeEach
    void run() throws IOException, URISyntaxException {
        Path original = Path.of(StudiesOfARunTest.class
                .getResource("/scenario/two-bores/scenario.yaml")
                .toURI());
        String limit = """

                limits:
                  - {name: spacing, quantity: distance, at: flowing, cause: proposed bores, at_least: 1 km}
                  - {name: "odd\\nname\\u202E", quantity: drawdown, at: flowing, cause: proposed bores, compared_with: without them, when: ever, at_most: 1 mm}
                """;
        Files.writeString(
                folder.resolve("scenario.yaml"), Files.readString(original).replace("\nlimits:\n", limit));
        headfall("run", folder.toString(), "--quiet").exits(0);
    }

    @Test
    void cappingPrintsTheGainThatItOrdersBy() {
        Answer answer = headfall("capping", folder.toString()).exits(0);
        assertTrue(
                answer.out()
                        .lines()
                        .anyMatch(line -> line.matches("  flowing +gain +[0-9.]+ mm per ML/yr; saves +[0-9.]+ ML/yr")),
                answer.out());
        assertTrue(
                answer.out().lines().filter(line -> !line.startsWith("Written")).allMatch(line -> line.length() <= 80),
                answer.out());
    }

    /** Shares of saved water add up to all of it, but for rounding of the five that are shown. */
    @Test
    void cappingSaysWhereSavedWaterIs() throws IOException {
        Answer answer = headfall("capping", folder.toString()).exits(0);
        Matcher shares = Pattern.compile("of ([0-9.]+) ML saved by .*?: still stored ([-0-9.]+) %, out at springs"
                        + " ([-0-9.]+) %, at other bores ([-0-9.]+) %, through boundaries ([-0-9.]+) % and the sealing"
                        + " bed ([-0-9.]+) %")
                .matcher(answer.outInOneLine());
        assertTrue(shares.find(), answer.out());
        double sum = 0;
        for (int group = 2; group <= 6; group++) {
            sum += Double.parseDouble(shares.group(group));
        }
        assertEquals(100, sum, 0.26, answer.out());
        String table = Files.readString(folder.resolve("results/scenario-capping/capping-water.csv"));
        assertTrue(table.startsWith("bore to shut,holder,water saved by the end (ML)"), table);
    }

    /** Names are shown as {@code run} shows them, and errors say what they leave out. */
    @Test
    void monitorShowsNoControlCharactersAndWhatWasNotTested() {
        Answer answer = headfall("monitor", folder.toString()).exits(0);
        String said = answer.outInOneLine();
        assertTrue(said.contains("odd?name?, flowing:"), said);
        assertTrue(said.contains("as computed; by its error between"), said);
        assertTrue(said.contains("what the grid and far boundaries add was not tested"), said);
    }

    /** Without its list of files and its own hash the summary vouches for nothing. */
    @Test
    void aSummaryThatVouchesForNothingIsRefused() throws IOException {
        Path summary = folder.resolve("results/scenario/summary.json");
        Files.writeString(
                summary,
                Files.readString(summary)
                        .replaceFirst("\"ownSha256\" : \"[0-9a-f]{64}\",", "")
                        .replaceFirst("(?s)\"files\" : \\{.*?\\}\\s*\\},", ""));
        for (String command : new String[] {"estimate", "capping", "monitor"}) {
            Answer answer = headfall(command, folder.toString());
            assertTrue(answer.exitCode() != 0, () -> command + ": " + answer);
            assertFalse(answer.toString().contains("unchanged."), () -> command + ": " + answer);
        }
    }

    @Test
    void monitorNamesTheLimitsThatItLeavesOut() throws IOException {
        Answer answer = headfall("monitor", folder.toString()).exits(0);
        assertTrue(answer.out().contains("spacing (flowing) is about where bores stand"), answer.out());
        Path table = folder.resolve("results/scenario-monitor/limits-not-counted.csv");
        assertTrue(Files.readString(table).contains("spacing (flowing),"), answer.out());
    }
}
