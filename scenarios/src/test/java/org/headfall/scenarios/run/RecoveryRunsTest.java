package org.headfall.scenarios.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.findings.Recoveries;
import org.headfall.scenarios.findings.Recovery;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.recording.PointHeads;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.solver.analytic.TheisSolution;
import org.headfall.solver.response.StationResponses;
import org.headfall.solver.simulation.Settings;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Recovery of a field after one bore stops beside superposed recovery of Theis (1935) with the image bore of a stream (Theis
 * 1941): the western side holds its head, so the bore has a mirror image beyond it that puts in what the bore takes. Drawdown
 * after the stop is that of the pair going on less that of a pair that starts then. The other sides lie too far away to matter.
 */
class RecoveryRunsTest {

    private static final double RATE = 20 * 86.4;
    private static final double YEAR = 365;
    private static final double TO_SIDE = 30_500;
    private static final TheisSolution THEIS = new TheisSolution(200, 1e-3);

    private static final String DOCUMENT = """
            title: One bore beside a side of fixed head
            datum: an invented datum
            crs: local
            period: {from: 2026-07-01, for: 1 yr}
            grid: {extent: {west: 0 km, east: 130 km, south: 0 km, north: 130 km}, cell: 1 km}
            aquifer: {transmissivity: 200 m2/d, storativity: 1e-3, top: -50 m, bottom: -150 m}
            ground: 100 m
            boundaries:
              - {name: west, side: west, fixed_head: 120 m}
            springs: [{name: far, at: [30.5 km, 85.5 km], outlet: 110 m, conductance: 1e-4 m2/d}]
            protected: [{name: near, at: [33.5 km, 65.5 km]}, {name: on the other side, at: [15.5 km, 65.5 km]}]
            bores:
              - {name: bore, at: [30.5 km, 65.5 km], group: proposed, screen_radius: 0.1 m, rate: 20 L/s, from: 2026-07-01}
            start: {steady: without bores}
            output: {report_after: [1 yr]}
            """;

    @TempDir
    static Path folder;

    private static RunPlan plan;
    private static FinishedRun run;

    @BeforeAll
    static void run() throws InputException, IOException {
        Path document = Files.writeString(folder.resolve("scenario.yaml"), DOCUMENT);
        plan = RunPlanner.plan(ScenarioReader.read(document, FileReach.FOLDER_OF_DOCUMENT), "Headfall test", 1);
        run = new ScenarioRun(plan, List.of(), (stage, fraction) -> {}).into(folder.resolve("results"), false);
    }

    private static Recovery at(String station) {
        return run.findings().recovery().lines().stream()
                .filter(recovery -> recovery.station().equals(station))
                .findFirst()
                .orElseThrow();
    }

    private static double image(double dx, double dy) {
        return Math.hypot(2 * TO_SIDE + dx, dy);
    }

    private static double pumped(double dx, double dy, double day) {
        return day <= 0 ? 0 : THEIS.drawdown(RATE, Math.hypot(dx, dy), day) - THEIS.drawdown(RATE, image(dx, dy), day);
    }

    private static DoubleUnaryOperator recovering(double dx, double dy) {
        return day -> pumped(dx, dy, day) - pumped(dx, dy, day - YEAR);
    }

    /** The closed form's own largest value from the stop on, and the day on which a tenth of it is left. */
    private static double[] closedForm(DoubleUnaryOperator drawdown) {
        double largest = YEAR;
        for (double day = YEAR; day < 3 * YEAR; day += 0.5) {
            largest = drawdown.applyAsDouble(day) > drawdown.applyAsDouble(largest) ? day : largest;
        }
        double recovered = largest;
        while (drawdown.applyAsDouble(recovered) > 0.1 * drawdown.applyAsDouble(largest)) {
            recovered += 0.001 * (recovered - YEAR + 0.01);
        }
        return new double[] {largest, drawdown.applyAsDouble(largest), recovered};
    }

    private static void assertRecovers(String station, double dx, double dy) {
        double[] expected = closedForm(recovering(dx, dy));
        Recovery found = at(station);
        assertEquals("proposed bores", found.taking());
        assertEquals(YEAR, found.stopDay());
        assertEquals(pumped(dx, dy, YEAR), found.atStop(), 0.01 * expected[1], "when it stops");
        assertEquals(expected[1], found.largest(), 0.01 * expected[1], "largest");
        assertEquals(expected[0], found.largestDay(), 0.02 * expected[0], "day of the largest");
        assertTrue(found.hasPassed());
        if (expected[2] > found.lastDay()) {
            assertTrue(found.recoveredDay().isEmpty(), "recovers only after the last day looked at");
        } else {
            double years = expected[2] - YEAR;
            assertEquals(years, found.recoveredDay().orElseThrow() - YEAR, 0.02 * years, "recovered");
        }
    }

    @Test
    void theBoreRecoversAsTheisWithItsImage() {
        assertRecovers("bore", 0.1, 0);
    }

    @Test
    void aPlaceNearRecoversAsTheisWithItsImage() {
        assertRecovers("near", 3000, 0);
    }

    @Test
    void drawdownBetweenTheBoreAndTheSideIsThatOfThePair() {
        assertRecovers("on the other side", -15_000, 0);
    }

    /** Far away drawdown is largest long after the stop, which lies beyond the end of the run. */
    @Test
    void theLateMaximumAtTheFarSpringIsThatOfTheis() {
        Recovery far = at("far");
        assertRecovers("far", 0, 20_000);
        assertTrue(far.largestDay() > YEAR + 60, "found on day " + far.largestDay());
        assertTrue(far.recoveredDay().isEmpty(), "the closed form takes longer than the 17 years looked at");
        assertTrue(far.largest() > 1.5 * far.atStop(), far.largest() + " m after " + far.atStop() + " m");
        assertTrue(far.error() < 0.002, "error " + far.error());
    }

    @Test
    void theBoresAreAllProposedSoThereIsOneTaking() {
        assertEquals(4, run.findings().recovery().lines().size());
        assertFalse(run.findings().recovery().lines().stream()
                .anyMatch(r -> r.taking().equals("all bores")));
        assertEquals(List.of(), run.findings().recovery().missing());
    }

    /** No arithmetic meets a rule to 1e-30 m. */
    @Test
    void aRuleThatCannotBeMetIsNamedWithItsSpring() {
        StationResponses responses = StationResponses.fromSteady(
                plan.problem(),
                PointHeads.of(plan.description(), plan.problem().boundaries()),
                RecoveryRuns.horizon(plan.description().endDay()),
                plan.settings());
        Settings settings = new Settings(
                1e-30, plan.settings().largestStep(), plan.settings().threads());
        RunPlan impossible = new RunPlan(
                plan.description(),
                plan.problem(),
                plan.start(),
                settings,
                plan.stationDays(),
                plan.gridDays(),
                plan.limits(),
                plan.mapPlaces(),
                plan.accounts(),
                plan.doubts(),
                plan.solving());
        Recoveries none = RecoveryRuns.of(impossible, responses, run.recording(), Optional.empty());
        assertEquals(List.of(), none.lines());
        assertTrue(
                none.missing().get(0).contains("the rule of 'far' cannot be met"),
                none.missing().get(0));
    }

    /** Responses that end with the run say nothing of what comes after it, and that has to be said. */
    @Test
    void responsesThatEndWithTheRunGiveTheReasonInsteadOfLines() {
        StationResponses shorter = StationResponses.fromSteady(
                plan.problem(),
                PointHeads.of(plan.description(), plan.problem().boundaries()),
                plan.description().endDay(),
                plan.settings());
        Recoveries none = RecoveryRuns.of(plan, shorter, run.recording(), Optional.empty());
        assertEquals(List.of(), none.lines());
        assertEquals(1, none.missing().size());
        assertTrue(
                none.missing().get(0).contains("proposed bores"), none.missing().get(0));
    }
}
