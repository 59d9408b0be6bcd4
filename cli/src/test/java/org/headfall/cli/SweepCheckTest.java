package org.headfall.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What is said about a sweep before it is made, and what is refused. */
class SweepCheckTest {

    @TempDir
    private Path folder;

    private Path sweep;
    private StringWriter out;
    private StringWriter err;

    @BeforeEach
    void writeScenario() throws IOException {
        SweepExample.writeSmall(folder);
        sweep = folder.resolve("some.yaml");
    }

    private void write(String variable) throws IOException {
        Files.writeString(sweep, """
                title: Some runs
                base: scenario.yaml
                vary:
                  - VARIABLE
                  - {name: S, key: aquifer.storativity, values: [1e-4, 2e-4]}
                design: full factorial
                keep:
                  - {figure: loss, at: Coolabah Spring, after: 1 yr}
                """.replace("VARIABLE", variable));
    }

    private int headfall(String... arguments) {
        out = new StringWriter();
        err = new StringWriter();
        return Headfall.execute(Terminal.NONE, new PrintWriter(out, true), new PrintWriter(err, true), arguments);
    }

    /** What was printed, in one line. */
    private String told() {
        assertTrue(out.toString().lines().allMatch(line -> line.length() <= 80 || !line.contains(" ")), out::toString);
        return out.toString().replaceAll("\\s+", " ");
    }

    private boolean nothingStarted() {
        return Files.notExists(folder.resolve("results"));
    }

    @Test
    void checksEveryRunAndStartsNothing() throws IOException {
        write("{name: T, key: aquifer.transmissivity, values: [100 m2/d, 200 m2/d, 300 m2/d]}");
        assertEquals(0, headfall("check", sweep.toString()), err::toString);
        assertTrue(told().contains("Some runs: 6 runs, 3 figures of each"), out::toString);
        assertTrue(told().contains("All 6 runs were looked at: all are valid scenarios."), out::toString);
        assertTrue(told().contains(" MB of memory for ") && told().contains("Nothing was started"), out::toString);
        assertTrue(nothingStarted());
    }

    @Test
    void namesRunsThatWouldFail() throws IOException {
        write("{name: T, key: aquifer.transmissivity, values: [100 m2/d, 0 m2/d, 300 m2/d]}");
        assertEquals(ExitCode.SOME_FAILED.code(), headfall("check", sweep.toString()), err::toString);
        assertTrue(told().contains("All 6 runs were looked at: 2 would fail."), out::toString);
        assertTrue(told().contains("runs 3, 4: not a valid scenario: some.yaml:4:"), out::toString);
        assertEquals(ExitCode.SOME_FAILED.code(), headfall("check", sweep.toString(), "--json"), err::toString);
        JsonNode answer = JsonMapper.builder().build().readTree(out.toString());
        assertEquals(6, answer.get("runs").asInt());
        assertEquals(6, answer.get("runsLookedAt").asInt());
        assertEquals(2, answer.get("runsNotValid").asInt());
        assertTrue(answer.get("leastSeconds").asDouble()
                < answer.get("mostSeconds").asDouble());
        assertTrue(nothingStarted());
    }

    @Test
    void reportsProblemsOfTheDocument() throws IOException {
        write("{name: T, key: aquifer.transmissivity, normal: {mean: 100 m2/d, deviation: 0 m2/d, at_least: 1 m2/d}}");
        assertEquals(1, headfall("check", sweep.toString()));
        String deviation =
                "some.yaml:4:80: vary[1].normal.deviation is out of range: found 0 m2/d; allowed: more than zero";
        assertTrue(err.toString().contains(deviation), err::toString);
        assertFalse(err.toString().contains("at_least"), err::toString);
    }

    @Test
    void findsTheSweepOfAFolderWithoutAScenarioAndRefusesToRunOne() throws IOException {
        write("{name: T, key: aquifer.transmissivity, values: [100 m2/d, 200 m2/d]}");
        Path alone = Files.createDirectory(folder.resolve("alone"));
        Files.move(folder.resolve("scenario.yaml"), alone.resolve("field.yaml"));
        Files.writeString(
                alone.resolve("sweep.yaml"),
                Files.readString(sweep).replace("base: scenario.yaml", "base: field.yaml"));
        assertEquals(0, headfall("check", alone.toString()), err::toString);
        assertTrue(told().contains("no problem found in it or in field.yaml"), out::toString);
        assertEquals(1, headfall("run", alone.resolve("sweep.yaml").toString()));
        assertTrue(err.toString().contains("found a sweep document; allowed: a scenario"), err::toString);
    }

    @Test
    void refusesMemoryThatHoldsNoRun() throws IOException {
        write("{name: T, key: aquifer.transmissivity, values: [100 m2/d, 200 m2/d]}");
        assertEquals(2, headfall("sweep", sweep.toString(), "--memory", "1m"));
        String told = err.toString().replaceAll("\\s+", " ");
        String needed = told.replaceAll(".*one run takes about (\\d+m), found 1m; allow at least so much.*", "$1");
        assertTrue(needed.matches("\\d+m"), told);
        assertTrue(nothingStarted());
        assertEquals(0, headfall("sweep", sweep.toString(), "--memory", needed), err::toString);
    }

    /** Time is told as a range before the start, and what of it is allowed. */
    @Test
    void saysBeforeTheStartThatTimeIsShort() throws IOException {
        write("{name: T, key: aquifer.transmissivity, range: {from: 100 m2/d, to: 300 m2/d, step: 2 m2/d}}");
        assertEquals(
                ExitCode.INCOMPLETE.code(),
                headfall("sweep", sweep.toString(), "--budget", "1s", "--threads", "1"),
                err::toString);
        String told = err.toString().replaceAll("\\s+", " ");
        assertTrue(told.contains("202 of 202 runs to make"), told);
        assertTrue(told.contains("; measuring, until 4 runs have ended that is more than the 1 s allowed: "), told);
        assertTrue(told.contains("of these 202 runs will probably be made; the same command goes on"), told);
        assertTrue(told().matches(".*Store: .*sweep.sqlite ?"), out::toString);
        String left = told().replaceAll(".* (\\d+) runs are left; the same command goes on with them.*", "$1");
        String recorded = told.replaceAll(".* (\\d+) of 202 runs recorded, 0 of them failed.*", "$1");
        assertEquals(202, Integer.parseInt(left) + Integer.parseInt(recorded), told);
    }
}
