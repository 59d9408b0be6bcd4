package org.headfall.scenarios.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.evidence.CheckedItem.State;
import org.headfall.scenarios.findings.HeadFit;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.RunPlanner;
import org.headfall.scenarios.run.ScenarioRun;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Evidence of fields whose heads are known without a run: between two sides of the same head and with nothing taken, head
 * is that of the sides everywhere and at all times.
 */
class EvidenceTest {

    private static final String DOCUMENT = """
            title: Still water
            DESCRIPTION
            datum: an invented datum
            crs: local
            period: {from: 2026-07-01, for: 2 yr}
            grid: {extent: {west: 0 km, east: 10 km, south: 0 km, north: 10 km}, cell: 1 km}
            aquifer: {transmissivity: 200 m2/d, storativity: 1e-3, top: TOP, bottom: -150 m}
            ground: 130 m
            boundaries:
              - {name: west, side: west, fixed_head: 120 m}
              - {name: east, side: east, fixed_head: 120 m}
            bores:
              - {name: middle, at: [5.5 km, 5.5 km], group: existing, screen_radius: 0.1 m, operation: off}
              - {name: rim, at: [BORE km, 5.5 km], group: existing, screen_radius: 0.1 m, operation: off}
            measurements: {file: heads.csv}
            start: {steady: with existing bores}
            output: {report_after: [1 yr]}
            """;

    @TempDir
    Path folder;

    private FinishedRun run(String document) throws InputException, IOException {
        return run(plan(document));
    }

    private FinishedRun run(RunPlan plan) throws IOException {
        return new ScenarioRun(plan, List.of(), (stage, fraction) -> {}).into(folder.resolve("results"), true);
    }

    private RunPlan plan(String document) throws InputException, IOException {
        Files.writeString(
                folder.resolve("heads.csv"),
                "name,date,head (m)\nmiddle,2026-09-01,119\nmiddle,2027-03-01,121.5\nrim,2027-06-01,120\n");
        Path file = Files.writeString(folder.resolve("scenario.yaml"), document);
        return RunPlanner.plan(ScenarioReader.read(file, FileReach.FOLDER_OF_DOCUMENT), "Headfall test", 1);
    }

    private static String still() {
        return DOCUMENT.replace("TOP", "-50 m").replace("BORE", "7.5").replace("DESCRIPTION", "description: To test.");
    }

    private static CheckedItem item(FinishedRun run, String words) {
        return Evidence.of(run).checklist().stream()
                .filter(item -> item.item().contains(words))
                .findFirst()
                .orElseThrow();
    }

    /** Errors are 1, -1.5 and 0 m; the measured range is 2.5 m. */
    @Test
    void theFitIsThatOfTheFormulas() throws InputException, IOException {
        FinishedRun run = run(still());
        HeadFit fit = HeadFit.of(run.description(), run.recording()).orElseThrow();
        assertEquals(3, fit.count());
        assertEquals(-0.5 / 3, fit.mean(), 1e-6);
        assertEquals(2.5 / 3, fit.meanAbsolute(), 1e-6);
        assertEquals(Math.sqrt((1 + 2.25) / 3), fit.rootMeanSquare(), 1e-6);
        assertEquals(2.5, fit.range());
        assertEquals(-1.5, fit.worst(), 1e-6);
        assertEquals("middle", fit.worstStation());
        assertEquals(State.NOT_MET, item(run, "meet measured ones").state(), "41 per cent of the range");
        assertEquals(
                1,
                HeadFit.at(run.description(), run.recording(), "rim")
                        .orElseThrow()
                        .count());
    }

    @Test
    void whatTheRunProvesIsShown() throws InputException, IOException {
        FinishedRun run = run(still());
        for (String words :
                List.of("purpose is stated", "accounted for", "converged", "stays full", "at the rim", "drift")) {
            assertEquals(State.SHOWN, item(run, words).state(), words);
        }
        assertEquals("To test.", item(run, "purpose is stated").found());
        assertEquals(State.NOT_SHOWN, item(run, "grid and time steps").state(), "without --doubts");
        assertEquals(State.OPEN, item(run, "fit for the decision").state());
        assertTrue(Evidence.of(run).notAnswered().stream().anyMatch(sentence -> sentence.contains("sets none")));
    }

    @Test
    void whatSpeaksAgainstARunIsNamedWithItsPlace() throws InputException, IOException {
        FinishedRun run =
                run(DOCUMENT.replace("TOP", "121 m").replace("BORE", "9.5").replace("DESCRIPTION\n", ""));
        CheckedItem rim = item(run, "at the rim");
        assertEquals(State.NOT_MET, rim.state());
        assertTrue(rim.found().contains("rim") && !rim.found().contains("middle"), rim.found());
        CheckedItem full = item(run, "stays full");
        assertEquals(State.NOT_MET, full.state());
        assertTrue(full.found().contains("100 cells (100.0"), full.found());
        assertEquals(State.NOT_SHOWN, item(run, "purpose is stated").state());
    }

    /**
     * Uniform flow (Darcy 1856): with 100 m at 10 km beyond the eastern side, head 7.5 km from the western one is {@code 120 -
     * 20 x 7.5 / 20}; at 15 km it is {@code 120 - 20 x 7.5 / 25}, 1.5 m higher, while nothing is lost.
     */
    @Test
    void aBoundaryThatMovesHeadsMoreThanTakingDoesIsNotMet() throws InputException, IOException {
        String flowing = still().replace(
                        "{name: east, side: east, fixed_head: 120 m}",
                        "{name: east, side: east, far_head: 100 m, distance: 10 km}");
        CheckedItem boundaries = item(run(plan(flowing).withDoubts()), "Boundaries do not decide");
        assertEquals(State.NOT_MET, boundaries.state(), boundaries.found());
        assertTrue(boundaries.found().contains("at most 1.5"), boundaries.found());
    }

    /** Heads that begin 2 m below those of both sides rise to them within a year: time constant S L²/(pi² T) = 51 d. */
    @Test
    void aStartThatDriftsIsNotMet() throws InputException, IOException {
        FinishedRun run = run(still().replace("{steady: with existing bores}", "{heads: 118 m}"));
        CheckedItem drift = item(run, "drift");
        assertEquals(State.NOT_MET, drift.state(), drift.found());
        assertTrue(drift.found().contains("+2.0") || drift.found().contains("+1.9"), drift.found());
        Assumption start = Evidence.of(run).assumptions().stream()
                .filter(assumption -> assumption.statement().startsWith("Heads at the start"))
                .findFirst()
                .orElseThrow();
        assertEquals(Assumption.Score.HIGH, start.effect());
    }

    @Test
    void theFilesHoldWhatTheReportShows() throws InputException, IOException {
        FinishedRun run = run(still());
        Path target = Files.createDirectory(folder.resolve("evidence"));
        EvidenceFiles.write(target, run);
        JsonNode json = new JsonMapper().readTree(Files.readString(target.resolve("evidence.json")));
        Evidence evidence = Evidence.of(run);
        assertEquals("To test.", json.get("purpose").asString());
        assertEquals(evidence.checklist().size(), json.get("checklist").size());
        assertEquals("shown", json.get("checklist").get(0).get("state").asString());
        assertEquals(
                evidence.checklist().size() + 1,
                Files.readAllLines(target.resolve("review.csv")).size());
        assertEquals(
                evidence.assumptions().size() + 1,
                Files.readAllLines(target.resolve("assumptions.csv")).size());
        assertFalse(Files.exists(target.resolve("evidence.json.part")));
    }

    private List<String> doubtsAbout(String bore) throws InputException, IOException {
        String document =
                still().replace("screen_radius: 0.1 m, operation: off}", "screen_radius: 0.1 m, " + bore + "}");
        return Evidence.of(run(document)).doubts().stream()
                .filter(doubt -> doubt.subject().equals("middle"))
                .map(Doubt::statement)
                .toList();
    }

    /** By Thiem (1906) 1,000 L/s at the middle of a strip of 200 m²/d lower head there by hundreds of metres. */
    @Test
    void ratesThatCannotBeHadAreNamed() throws InputException, IOException {
        List<String> dry = doubtsAbout("rate: 1000 L/s");
        assertTrue(
                dry.stream().anyMatch(words -> words.contains("below the bottom of the aquifer, -150.00 m")), "" + dry);
        List<String> cut = doubtsAbout("rate: 1000 L/s, lowest_level: 100 m");
        assertTrue(cut.stream().anyMatch(words -> words.contains("less than the rate asked for")), "" + cut);
        List<String> weak =
                doubtsAbout("pump: {curve: [[0 L/s, 20 m], [10 L/s, 15 m], [20 L/s, 5 m]], delivery_level: 200 m}");
        assertTrue(weak.stream().anyMatch(words -> words.contains("gives no water")), "" + weak);
        assertTrue(doubtsAbout("rate: 1 L/s").isEmpty());
    }
}
