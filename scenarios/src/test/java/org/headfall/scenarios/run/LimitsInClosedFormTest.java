package org.headfall.scenarios.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.limits.LimitResult;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.solver.analytic.TheisSolution;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Limits of a simulated field beside the solution of Theis (1935) and its superposed recovery (Theis 1935, the drawdown
 * after a bore has stopped is that of the bore going on less that of one starting then). One bore is pumped for a year in the
 * middle of a wide aquifer; the rim lies too far away to matter.
 */
class LimitsInClosedFormTest {

    private static final double RATE = 20 * 86.4;
    private static final double YEAR = 365;
    private static final TheisSolution THEIS = new TheisSolution(200, 1e-3);

    private static final String DOCUMENT = """
            title: One bore
            datum: an invented datum
            crs: local
            period: {from: 2026-07-01, for: 1 yr}
            grid: {extent: {west: 0 km, east: 80 km, south: 0 km, north: 80 km}, cell: 1 km}
            aquifer: {transmissivity: 200 m2/d, storativity: 1e-3, top: -50 m, bottom: -150 m}
            ground: 100 m
            boundaries:
              - {name: west, side: west, fixed_head: 120 m}
              - {name: east, side: east, fixed_head: 120 m}
              - {name: south, side: south, fixed_head: 120 m}
              - {name: north, side: north, fixed_head: 120 m}
            springs: [{name: far, at: [55.5 km, 40.5 km], outlet: 110 m, conductance: 1e-3 m2/d}]
            protected: [{name: near, at: [43.5 km, 44.5 km]}]
            bores:
              - {name: bore, at: [40.5 km, 40.5 km], group: proposed, screen_radius: 0.1 m, rate: 20 L/s, from: 2026-07-01}
            limits:
              - name: far and late
                quantity: drawdown
                at: far
                cause: proposed bores
                when: ever, also after taking stops
                at_most: 5 m
              - {name: in the period, quantity: drawdown, at: far, cause: proposed bores, when: ever, at_most: 5 m}
              - {name: rate, quantity: decline rate, at: near, when: ever, at_most: 0.1 m/yr}
              - {name: date, quantity: drawdown, at: near, cause: everyone, when: ever, at_most: 0.8 m}
              - {name: since the start, quantity: drawdown, at: every cell, cause: everyone, when: ever, at_most: AREA m}
              - {name: without, quantity: drawdown, at: every cell, cause: proposed bores, when: ever, at_most: AREA m}
            start: {steady: without bores}
            output: {bores: [2026-10-20, 2026-10-25, 2026-10-30, 2026-11-05, 2026-11-10, 2026-11-15], report_after: [1 yr]}
            """;

    private static final double RADIUS = 10_000;

    @TempDir
    static Path folder;

    private static FinishedRun run;

    @BeforeAll
    static void run() throws InputException, IOException {
        double drawdown = THEIS.drawdown(RATE, RADIUS, YEAR);
        Path document =
                Files.writeString(folder.resolve("scenario.yaml"), DOCUMENT.replace("AREA", Double.toString(drawdown)));
        RunPlan plan = RunPlanner.plan(ScenarioReader.read(document, FileReach.FOLDER_OF_DOCUMENT), "Headfall test", 1);
        run = new ScenarioRun(plan, List.of(), (stage, fraction) -> {}).into(folder.resolve("results"), false);
    }

    private static Outcome outcome(String limit) {
        return run.limits().stream()
                .filter(result -> result.limit().name().equals(limit))
                .map(LimitResult::outcome)
                .findFirst()
                .orElseThrow();
    }

    private static Outcome.Worst worst(String limit) {
        return outcome(limit).worstIfAny().orElseThrow();
    }

    private static double recovering(double distance, double day) {
        return THEIS.drawdown(RATE, distance, day) - THEIS.drawdown(RATE, distance, day - YEAR);
    }

    @Test
    void theLateMaximumIsThatOfTheSuperposedRecovery() {
        double latest = YEAR;
        for (double day = YEAR + 1; day < 3 * YEAR; day++) {
            latest = recovering(15_000, day) > recovering(15_000, latest) ? day : latest;
        }
        double largest = recovering(15_000, latest);
        Outcome.Worst late = worst("far and late");
        assertTrue(latest > YEAR + 30, "the closed form is largest on day " + latest);
        assertEquals(largest, late.value(), 0.01 * largest);
        assertEquals(latest, late.day(), 10);
        assertTrue(late.note().contains("had passed"), late.note());
        Outcome.Worst within = worst("in the period");
        assertEquals(YEAR, within.day(), "without that the last day is the worst");
        assertEquals(THEIS.drawdown(RATE, 15_000, YEAR), within.value(), 0.01 * largest);
    }

    @Test
    void theDeclineOfTheFirstYearIsThatOfTheis() {
        double drawdown = THEIS.drawdown(RATE, 5000, YEAR);
        assertEquals(drawdown / (YEAR / 365.25), worst("rate").value(), 0.01 * drawdown);
    }

    /** By inversion of the closed form; records every five days carry it to the day. */
    @Test
    void theDateOfCrossingIsThatOfTheis() {
        double day = 1;
        while (THEIS.drawdown(RATE, 5000, day) < 0.8) {
            day += 0.01;
        }
        Outcome.Crossed crossed = assertInstanceOf(Outcome.Crossed.class, outcome("date"));
        assertEquals(day, crossed.firstDay(), 0.5);
    }

    /** Drawdown is beyond that of the radius within the circle; cells of 1 km cover it within two in a hundred. */
    @Test
    void theAffectedAreaIsThatOfTheRadius() {
        double circle = Math.PI * RADIUS * RADIUS / 1e6;
        for (String limit : List.of("since the start", "without")) {
            Matcher area = Pattern.compile("limit on ([0-9.]+) km")
                    .matcher(worst(limit).note());
            assertTrue(area.find(), worst(limit).note());
            assertEquals(circle, Double.parseDouble(area.group(1)), 0.02 * circle, limit);
        }
    }
}
