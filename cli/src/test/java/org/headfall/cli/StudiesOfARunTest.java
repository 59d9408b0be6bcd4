package org.headfall.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What {@code capping} and {@code monitor} print of a run. */
class StudiesOfARunTest {

    @TempDir
    Path folder;

    private final StringWriter out = new StringWriter();

    private int headfall(String... arguments) {
        PrintWriter writer = new PrintWriter(out, true);
        return Headfall.execute(Terminal.NONE, writer, writer, arguments);
    }

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
        assertEquals(0, headfall("run", folder.toString(), "--quiet"), out::toString);
    }

    @Test
    void cappingPrintsTheGainThatItOrdersBy() {
        assertEquals(0, headfall("capping", folder.toString()), out::toString);
        assertTrue(
                out.toString()
                        .lines()
                        .anyMatch(line -> line.matches("  flowing +gain +[0-9.]+ mm per ML/yr; saves +[0-9.]+ ML/yr")),
                out::toString);
        assertTrue(
                out.toString()
                        .lines()
                        .filter(line -> !line.startsWith("Written"))
                        .allMatch(line -> line.length() <= 80),
                out::toString);
    }

    /** Names are shown as {@code run} shows them, and errors say what they leave out. */
    @Test
    void monitorShowsNoControlCharactersAndWhatWasNotTested() {
        out.getBuffer().setLength(0);
        assertEquals(0, headfall("monitor", folder.toString()), out::toString);
        String said = out.toString().replaceAll("\\s+", " ");
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
            out.getBuffer().setLength(0);
            int code = headfall(command, folder.toString());
            assertTrue(code != 0, () -> command + ": " + out);
            assertFalse(out.toString().contains("unchanged."), () -> command + ": " + out);
        }
    }

    @Test
    void monitorNamesTheLimitsThatItLeavesOut() throws IOException {
        assertEquals(0, headfall("monitor", folder.toString()), out::toString);
        assertTrue(out.toString().contains("spacing (flowing) is about where bores stand"), out::toString);
        Path table = folder.resolve("results/scenario-monitor/limits-not-counted.csv");
        assertTrue(Files.readString(table).contains("spacing (flowing),"), out::toString);
    }
}
