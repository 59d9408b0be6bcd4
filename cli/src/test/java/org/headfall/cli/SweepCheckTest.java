package org.headfall.cli;

import static org.headfall.cli.Answer.headfall;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
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

    /** What was printed, in one line, after asserting that it fits a terminal. */
    private static String told(Answer answer) {
        String out = answer.out();
        assertTrue(out.lines().allMatch(line -> line.length() <= 80 || !line.contains(" ")), out);
        return answer.outInOneLine();
    }

    private boolean nothingStarted() {
        return Files.notExists(folder.resolve("results"));
    }

    @Test
    void checksEveryRunAndStartsNothing() throws IOException {
        write("{name: T, key: aquifer.transmissivity, values: [100 m2/d, 200 m2/d, 300 m2/d]}");
        Answer answer = headfall("check", sweep.toString()).exits(0);
        assertTrue(told(answer).contains("Some runs: 6 runs, 3 figures of each"), answer.out());
        assertTrue(told(answer).contains("All 6 runs were looked at: all are valid scenarios."), answer.out());
        assertTrue(
                told(answer).contains(" MB of memory for ") && told(answer).contains("Nothing was started"),
                answer.out());
        assertTrue(nothingStarted());
    }

    @Test
    void namesRunsThatWouldFail() throws IOException {
        write("{name: T, key: aquifer.transmissivity, values: [100 m2/d, 0 m2/d, 300 m2/d]}");
        Answer answer = headfall("check", sweep.toString()).exits(ExitCode.SOME_FAILED);
        assertTrue(told(answer).contains("All 6 runs were looked at: 2 would fail."), answer.out());
        assertTrue(told(answer).contains("runs 3, 4: not a valid scenario: some.yaml:4:"), answer.out());
        String json = headfall("check", sweep.toString(), "--json")
                .exits(ExitCode.SOME_FAILED)
                .out();
        JsonNode parsed = JsonMapper.builder().build().readTree(json);
        assertEquals(6, parsed.get("runs").asInt());
        assertEquals(6, parsed.get("runsLookedAt").asInt());
        assertEquals(2, parsed.get("runsNotValid").asInt());
        assertTrue(parsed.get("leastSeconds").asDouble()
                < parsed.get("mostSeconds").asDouble());
        assertTrue(nothingStarted());
    }

    @Test
    void reportsProblemsOfTheDocument() throws IOException {
        write("{name: T, key: aquifer.transmissivity, normal: {mean: 100 m2/d, deviation: 0 m2/d, at_least: 1 m2/d}}");
        Answer answer = headfall("check", sweep.toString()).exits(1);
        String deviation =
                "some.yaml:4:80: vary[1].normal.deviation is out of range: found 0 m2/d; allowed: more than zero";
        assertTrue(answer.err().contains(deviation), answer.err());
        assertFalse(answer.err().contains("at_least"), answer.err());
    }

    @Test
    void findsTheSweepOfAFolderWithoutAScenarioAndRefusesToRunOne() throws IOException {
        write("{name: T, key: aquifer.transmissivity, values: [100 m2/d, 200 m2/d]}");
        Path alone = Files.createDirectory(folder.resolve("alone"));
        Files.move(folder.resolve("scenario.yaml"), alone.resolve("field.yaml"));
        Files.writeString(
                alone.resolve("sweep.yaml"),
                Files.readString(sweep).replace("base: scenario.yaml", "base: field.yaml"));
        Answer answer = headfall("check", alone.toString()).exits(0);
        assertTrue(told(answer).contains("no problem found in it or in field.yaml"), answer.out());
        answer = headfall("run", alone.resolve("sweep.yaml").toString()).exits(1);
        assertTrue(answer.err().contains("found a sweep document; allowed: a scenario"), answer.err());
    }

    @Test
    void refusesMemoryThatHoldsNoRun() throws IOException {
        write("{name: T, key: aquifer.transmissivity, values: [100 m2/d, 200 m2/d]}");
        Answer answer = headfall("sweep", sweep.toString(), "--memory", "1m").exits(2);
        String told = answer.errInOneLine();
        String needed = told.replaceAll(".*one run takes about (\\d+m), found 1m; allow at least so much.*", "$1");
        assertTrue(needed.matches("\\d+m"), told);
        assertTrue(nothingStarted());
        headfall("sweep", sweep.toString(), "--memory", needed).exits(0);
    }

    /** Time is told as a range before the start, and what of it is allowed. */
    @Test
    void saysBeforeTheStartThatTimeIsShort() throws IOException {
        write("{name: T, key: aquifer.transmissivity, range: {from: 100 m2/d, to: 300 m2/d, step: 2 m2/d}}");
        Answer answer = headfall("sweep", sweep.toString(), "--budget", "1s", "--threads", "1")
                .exits(ExitCode.INCOMPLETE);
        String told = answer.errInOneLine();
        assertTrue(told.contains("202 of 202 runs to make"), told);
        assertTrue(told.contains("; measuring, until 4 runs have ended that is more than the 1 s allowed: "), told);
        assertTrue(told.contains("of these 202 runs will probably be made; the same command goes on"), told);
        assertTrue(told(answer).matches(".*Store: .*sweep.sqlite ?"), answer.out());
        String left = told(answer).replaceAll(".* (\\d+) runs are left; the same command goes on with them.*", "$1");
        String recorded = told.replaceAll(".* (\\d+) of 202 runs recorded, 0 of them failed.*", "$1");
        assertEquals(202, Integer.parseInt(left) + Integer.parseInt(recorded), told);
    }
}
