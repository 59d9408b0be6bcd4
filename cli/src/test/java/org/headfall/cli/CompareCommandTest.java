package org.headfall.cli;

import static org.headfall.cli.Answer.headfall;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command {@code compare} on results of src/test/resources/scenario/two-bores and variants of it. */
class CompareCommandTest {

    @TempDir
    private Path folder;

    private String document = "";

    @BeforeEach
    void readDocument() throws IOException, URISyntaxException {
        document = Files.readString(Path.of(CompareCommandTest.class
                .getResource("/scenario/two-bores/scenario.yaml")
                .toURI()));
    }

    private Path run(String name, String text) throws IOException {
        Path file = Files.writeString(folder.resolve(name + ".yaml"), text);
        headfall("run", file.toString(), "--quiet").exits(0);
        return folder.resolve("results").resolve(name);
    }

    private String compared(Path first, Path second) {
        String[] command = {
            "compare",
            first.toString(),
            second.toString(),
            "--output",
            folder.resolve("beside").toString(),
            "--overwrite"
        };
        Answer answer = headfall(command).exits(0);
        assertTrue(
                answer.out().lines().allMatch(line -> line.length() <= 80 || line.startsWith("Written")), answer.out());
        return answer.outInOneLine();
    }

    @Test
    void whatSpringsLoseAndWhoIsAffectedComesFirst() throws IOException {
        Path idle = run("idle", document.replace("rate: 40 L/s", "rate: 0 L/s"));
        String said = compared(idle, run("pumped", document));
        assertTrue(
                said.matches(".*pool: head [0-9.]+ m lower.*; gives [0-9.]+ L/s instead of [0-9.]+, [0-9]+ % less .*"),
                said);
        assertTrue(said.matches(".*flowing: head [0-9.]+ m lower.*; (stops flowing|gives) .*"), said);
        assertTrue(said.contains("count as cause, not as affected: pumped."), said);
        assertFalse(said.contains("pumped: head"), said);
        assertFalse(said.contains("differ in more"), said);
        assertFalse(said.contains("could not be compared"), said);
    }

    @Test
    void otherFieldsAreNotComparedWithoutAWord() throws IOException {
        Path first = run("first", document);
        String other = document.replace("fixed_head: 110 m", "fixed_head: 111 m")
                .replace("transmissivity: 200 m2/d", "transmissivity: 240 m2/d");
        String said = compared(first, run("other", other));
        assertTrue(said.contains("differ in more than what their bores do"), said);
        assertTrue(said.contains(" transmissivity (in 100 % of the cells)"), said);
        assertTrue(said.contains(" heads and flows of the boundaries"), said);
        assertTrue(said.contains(" heads at the start (by up to "), said);
        assertTrue(Files.readString(folder.resolve("beside").resolve("compared-runs.csv"))
                .contains("heads and flows of the boundaries"));
    }

    /** The last map of both is that of the first year, tables of both reach to the last day of the shorter run. */
    @Test
    void runsOfUnequalLengthAreComparedOnTheLastDayOfBoth() throws IOException {
        Path idle = run("idle", document.replace("rate: 40 L/s", "rate: 0 L/s"));
        Path shorter = run(
                "shorter",
                document.replace("for: 5 yr", "until: 2031-01-01")
                        .replace("report_after: [1 yr, 5 yr]", "report_after: [1 yr]"));
        String said = compared(idle, shorter);
        assertTrue(said.contains("Compared on 2031-01-01, the last day of both"), said);
        assertTrue(said.contains("whose head is then lower by 0.5 m or more: 1 "), said);
        assertTrue(said.contains("Area where head is lower on 2027-07-01, the last map of both: by 0.5"), said);
        assertTrue(Files.readString(folder.resolve("beside").resolve("affected-places.csv"))
                .contains("2031-01-01,,flowing"));
    }

    /** On all report dates, 1 July and 1 January, the bore rests in both runs. */
    @Test
    void aBoreThatTakesInAnotherSeasonIsCause() throws IOException {
        String seasonal = document.replace("rate: 40 L/s", "rate: 40 L/s\n    season: {from: 1 March, to: 1 May}");
        Path autumn = run("autumn", seasonal);
        String said = compared(
                autumn,
                run("spring", seasonal.replace("from: 1 March, to: 1 May", "from: 1 September, to: 1 November")));
        assertTrue(said.contains("count as cause, not as affected: pumped."), said);
    }

    @Test
    void aRunBesideItselfDiffersInNothing() throws IOException {
        Path one = run("one", document);
        String said = compared(one, one);
        assertTrue(
                said.contains("pool: head the same (numerical error up to 0.02 m); gives no water in either run"),
                said);
        assertTrue(said.contains("No bore or point has a head that is lower then by 0.5 m or more."), said);
        assertTrue(said.contains("by 0.5 m or more none;"), said);
        assertFalse(said.contains("cause"), said);
    }
}
