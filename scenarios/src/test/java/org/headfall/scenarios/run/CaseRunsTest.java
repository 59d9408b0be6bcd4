package org.headfall.scenarios.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.limits.LimitResult;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.results.ResultsException;
import org.headfall.scenarios.results.ResultsReader;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Cases of one document beside each other, and beside what a single run says of the same difference. */
class CaseRunsTest {

    private static final String DOCUMENT = """
            title: Cases
            datum: an invented datum
            crs: local
            period: {from: 2026-07-01, for: 4 yr}
            grid: {extent: {west: 0 km, east: 20 km, south: 0 km, north: 20 km}, cell: 1 km}
            aquifer: {transmissivity: 200 m2/d, storativity: 2e-4, top: -50 m, bottom: -150 m}
            ground: 100 m
            boundaries: [{name: west, side: west, fixed_head: 120 m}]
            protected: [{name: well, at: [10 km, 12 km]}]
            bores:
              - {name: old, at: [8 km, 8 km], group: existing, screen_radius: 0.1 m, rate: 5 L/s, entitlement: 400 ML/yr}
              - {name: new, at: [12 km, 8 km], group: proposed, screen_radius: 0.1 m, rate: 10 L/s}
            accounts: {water_year: 1 July}
            cases:
              - without any taking
              - existing as used
              - existing at full entitlement
              - with the proposal
              - after taking stops on 2028-07-01
            limits:
              - {name: by case, quantity: drawdown, at: well, cause: everyone, compared_with: existing as used, when: ever, at_most: 1 m}
              - {name: by run, quantity: drawdown, at: well, cause: proposed bores, when: ever, at_most: 1 m}
              - {name: everywhere, quantity: drawdown, at: every cell, cause: everyone, compared_with: existing as used, when: ever, at_most: 30 m}
              - {name: fall, quantity: drawdown, at: well, cause: everyone, when: ever, at_most: 100 m}
            start: {steady: with existing bores}
            output: {report_after: [2 yr, 4 yr]}
            """;

    @TempDir
    static Path folder;

    private static Map<String, FinishedRun> runs;

    @BeforeAll
    static void run() throws InputException, IOException {
        runs = new CaseRuns(plans(), StandardOutputs.all(List.of()), (stage, fraction) -> {})
                .into(folder.resolve("results"), false);
    }

    private static List<CasePlan> plans() throws InputException, IOException {
        Path document = Files.writeString(folder.resolve("scenario.yaml"), DOCUMENT);
        return RunPlanner.cases(ScenarioReader.read(document, FileReach.FOLDER_OF_DOCUMENT), "Headfall test", 1);
    }

    private static Outcome outcome(String name, String limit) {
        return runs.get(name).limits().stream()
                .filter(result -> result.limit().name().equals(limit))
                .map(LimitResult::outcome)
                .findFirst()
                .orElseThrow();
    }

    private static double worst(String name, String limit) {
        return outcome(name, limit).worstIfAny().orElseThrow().value();
    }

    private static double head(String name, int station, double day) {
        return runs.get(name).recording().series().get(station).headAt(day);
    }

    @Test
    void allCasesStartFromTheSameHeads() {
        for (FinishedRun run : runs.values()) {
            assertEquals(
                    head("with the proposal", 2, 0),
                    run.recording().series().get(2).head()[0],
                    1e-9);
        }
        assertTrue(head("without any taking", 2, 1461) > head("without any taking", 2, 0) + 0.1, "recovers");
    }

    /** The difference of two simulations is what superposition gives within one of them. */
    @Test
    void aLimitBesideACaseSaysWhatOneWithoutTheProposalSays() {
        assertEquals(worst("with the proposal", "by run"), worst("with the proposal", "by case"), 2e-3);
        assertTrue(worst("with the proposal", "by case") > 1, "the proposal is felt");
        assertInstanceOf(Outcome.Holds.class, outcome("existing as used", "by case"));
        assertEquals(0, worst("existing as used", "by case"), "beside itself");
        assertTrue(worst("with the proposal", "everywhere") > worst("with the proposal", "by case"));
    }

    /** Drawdown is linear in discharge: 400 ML/yr are 2.535 times 5 L/s, so the change since the start is 1.535 times. */
    @Test
    void fullEntitlementIsPumpedEvenly() {
        double used = 5 * 86.4;
        double entitled = 400_000 / 365.25;
        assertEquals(
                entitled,
                runs.get("existing at full entitlement")
                        .recording()
                        .series()
                        .get(0)
                        .dischargeAt(365),
                1e-9);
        assertTrue(
                runs.get("existing at full entitlement").description().assumptions().stream()
                        .anyMatch(sentence -> sentence.contains("pumped evenly")),
                "it is among the assumptions");
        double fall = worst("existing at full entitlement", "fall");
        double rise = head("without any taking", 2, 1461) - head("without any taking", 2, 0);
        assertEquals((entitled - used) / used, fall / rise, 2e-3);
    }

    @Test
    void nothingIsTakenAfterTakingStops() {
        double twoYears = 731;
        assertEquals(head("with the proposal", 2, twoYears), head("after taking stops", 2, twoYears), 2e-3);
        assertEquals(head("without any taking", 2, 1461), head("after taking stops", 2, 1461), 0.2);
    }

    @Test
    void eachCaseHasAFolderAndAllHaveOneTable() throws IOException {
        Path results = folder.resolve("results");
        for (CasePlan one : uncheckedPlans()) {
            FinishedRun read = new ResultsReader().read(results.resolve(one.folder()));
            assertEquals(runs.get(one.name()).limits(), read.limits());
            assertTrue(Files.isRegularFile(results.resolve(one.folder()).resolve("accounts.csv")));
        }
        List<String> lines = Files.readAllLines(results.resolve("limits-by-case.csv"));
        assertEquals(1 + 4, lines.size());
        assertTrue(lines.get(0).contains("existing at full entitlement: outcome"), lines.get(0));
    }

    private static List<CasePlan> uncheckedPlans() throws IOException {
        try {
            return plans();
        } catch (InputException e) {
            throw new AssertionError(e);
        }
    }

    /** Results are replaced only if asked for, and a folder with something else in it is kept. */
    @Test
    void keepsWhatItHasNotWritten() throws IOException {
        CaseRuns again = new CaseRuns(uncheckedPlans(), List.of(), (stage, fraction) -> {});
        assertThrows(ResultsException.class, () -> again.into(folder.resolve("results"), false));
        Path foreign = Files.createDirectories(folder.resolve("foreign").resolve("letters"));
        Files.writeString(foreign.resolve("letter.txt"), "mine");
        assertThrows(ResultsException.class, () -> again.into(folder.resolve("foreign"), true));
        assertTrue(Files.exists(foreign.resolve("letter.txt")));
    }
}
