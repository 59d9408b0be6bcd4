package org.headfall.scenarios.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.results.FinishedRun;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Doubts of limits on the map in uniform flow (Darcy 1856): between 120 m in the west and 100 m at a distance D beyond the
 * east, head runs straight, {@code 120 - 20 x / (L + D)}. With D half as far again it stands higher by what that says.
 */
class MapDoubtsTest {

    private static final double LENGTH = 10_000;
    private static final double DISTANCE = 10_000;

    private static final String DOCUMENT = """
            title: Uniform flow
            datum: an invented datum
            crs: local
            period: {from: 2026-07-01, for: 2 yr}
            grid: {extent: {west: 0 km, east: 10 km, south: 0 km, north: 4 km}, cell: 500 m}
            aquifer: {transmissivity: 200 m2/d, storativity: 1e-3, top: -50 m, bottom: -150 m}
            ground: 130 m
            boundaries:
              - {name: west, side: west, fixed_head: 120 m}
              - {name: east, side: east, far_head: 100 m, distance: 10 km}
            bores:
              - {name: quiet, at: [5.25 km, 2.25 km], group: existing, screen_radius: 0.1 m, operation: off}
            limits:
              - {name: floor, quantity: floor level, at: every cell, when: ever, at_least: 50 m}
              - {name: fall, quantity: drawdown, at: every cell, cause: everyone, when: ever, at_most: 5 m}
              - {name: without, quantity: drawdown, at: every cell, cause: existing bores, when: ever, at_most: 5 m}
            start: {steady: with existing bores}
            output: {grids: [2028-07-01], report_after: [1 yr]}
            """;

    @TempDir
    static Path folder;

    private static FinishedRun run;

    @BeforeAll
    static void run() throws InputException, IOException {
        Path document = Files.writeString(folder.resolve("scenario.yaml"), DOCUMENT);
        RunPlan plan = RunPlanner.plan(ScenarioReader.read(document, FileReach.FOLDER_OF_DOCUMENT), "Headfall test", 1)
                .withDoubts();
        run = new ScenarioRun(plan, List.of(), (stage, fraction) -> {}).into(folder.resolve("results"), false);
    }

    private static Outcome.Worst worst(String limit) {
        return run.limits().stream()
                .filter(result -> result.limit().name().equals(limit))
                .findFirst()
                .orElseThrow()
                .outcome()
                .worstIfAny()
                .orElseThrow();
    }

    private static double head(double x, double distance) {
        return 120 - 20 * x / (LENGTH + distance);
    }

    @Test
    void aBoundaryCountsByWhatItDoesInTheLastCell() {
        double centre = LENGTH - 250;
        assertEquals(head(centre, DISTANCE), worst("floor").value(), 1e-4);
        double change = head(centre, 1.5 * DISTANCE) - head(centre, DISTANCE);
        assertEquals(change, worst("floor").error(), 0.01, "the grid and the steps add next to nothing");
    }

    @Test
    void whatTheBoundaryShiftsAlikeIsNoDoubtOfADrawdown() {
        for (String limit : List.of("fall", "without")) {
            assertEquals(0, worst(limit).value(), 1e-4, limit);
            assertTrue(
                    worst(limit).error() < 0.01,
                    () -> limit + " " + worst(limit).error());
        }
    }

    /** The document asks for heads of one day; the limit is judged on a twentieth of the run each, both ends and after 1 yr. */
    @Test
    void mapsAreJudgedOnEvenDays() {
        assertTrue(
                worst("fall").note().contains("judged on 22 days with heads of cells"),
                worst("fall").note());
    }
}
