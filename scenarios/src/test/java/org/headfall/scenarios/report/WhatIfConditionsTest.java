package org.headfall.scenarios.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.report.content.WhatIf;
import org.headfall.scenarios.results.FinishedRun;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A pump that is cut back takes more when others stop, which the page cannot find: it must not judge by it. */
class WhatIfConditionsTest {

    private static final String DOCUMENT = """
            title: two pumps
            datum: an invented datum
            crs: local
            period: {from: 2026-07-01, for: 2 yr}
            grid: {extent: {west: 0 km, east: 20 km, south: 0 km, north: 20 km}, cell: 1 km}
            aquifer: {transmissivity: 100 m2/d, storativity: 2e-4, top: 0 m, bottom: -100 m}
            ground: 100 m
            boundaries: [{name: west, side: west, fixed_head: 110 m}]
            protected: [{name: homestead, at: [6 km, 6 km]}]
            bores:
              - {name: new, at: [12 km, 12 km], group: proposed, screen_radius: 0.1 m, rate: 10 L/s}
              - {name: old, at: [8 km, 8 km], group: existing, screen_radius: 0.1 m, lowest_level: LOWEST, rate: 20 L/s}
            limits:
              - {name: by the new, quantity: drawdown, at: homestead, cause: proposed bores, when: ever, at_most: 5 m}
              - {name: level, quantity: floor level, at: homestead, when: ever, at_least: 50 m}
            start: {steady: without bores}
            output: {report_after: [1 yr]}
            """;

    @TempDir
    Path folder;

    private WhatIf whatIf(String lowest) throws InputException, IOException {
        Path document = Files.writeString(folder.resolve("scenario.yaml"), DOCUMENT.replace("LOWEST", lowest));
        Path results = folder.resolve("results");
        FinishedRun run = DocumentRun.into(document, results, List.of());
        return RunReport.of(run, results).whatIf().orElseThrow();
    }

    @Test
    void aLimitThatDependsOnAPumpCutBackIsLeftToARun() throws Exception {
        WhatIf cut = whatIf("100 m");
        assertEquals(
                List.of(1), cut.limits().stream().map(WhatIf.Condition::limit).toList());
        assertEquals(0, cut.notJudged().get(0).limit());
        assertTrue(
                cut.notJudged()
                        .get(0)
                        .reason()
                        .startsWith("old would give another discharge without the proposed bores"),
                cut.notJudged().get(0).reason());
    }

    @Test
    void aPumpThatFollowsItsRateIsNoObstacle() throws Exception {
        WhatIf follows = whatIf("-50 m");
        assertEquals(List.of(), follows.notJudged());
        assertEquals(List.of(0), follows.limits().get(0).causes());
    }
}
