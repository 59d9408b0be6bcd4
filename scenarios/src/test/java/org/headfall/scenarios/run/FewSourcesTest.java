package org.headfall.scenarios.run;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.sweep.SweepFolder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The reference is the same run answered with steps held tightly. */
class FewSourcesTest {

    private static final String BORE = "    screen_radius: 100 mm\n    outlet_level: 101 m\n    rate: ";

    @TempDir
    Path parent;

    /** Three bores in proportion, a spring, and stock bores; heads to a tolerance. */
    private RunPlan plan(String tolerance) throws InputException, IOException {
        Path base = new SweepFolder(parent).base();
        String more = "  - name: Town 2\n    at: [412 km, 6311 km]\n    group: proposed\n" + BORE + "6 L/s\n"
                + "  - name: Town 3\n    at: [426 km, 6328 km]\n    group: proposed\n" + BORE + "9 L/s\n"
                + "limits:";
        String document = Files.readString(base)
                .replace("limits:", more)
                .replaceFirst("output: \\{", "output: {head_tolerance: " + tolerance + ", ");
        assertTrue(document.contains(tolerance), document);
        Files.writeString(base, document);
        return RunPlanner.plan(ScenarioReader.read(base, FileReach.FOLDER_OF_DOCUMENT), "test", 1);
    }

    /** However coarse a run may be, an answer keeps to 5 mm, and states what rules may be missed by. */
    @Test
    void keepsWhatIsPromisedWhereTheRunItselfMayBeCoarse() throws InputException, IOException {
        FinishedRun fine = FewSources.answer(plan("0.1 mm")).orElseThrow();
        FinishedRun coarse = FewSources.answer(plan("50 cm")).orElseThrow();
        assertEquals(
                "few sources of its own",
                coarse.figures().answeredFrom().orElseThrow().words());
        double stated = coarse.figures().answeredFrom().orElseThrow().estimatedError();
        assertTrue(stated >= 1e-3 && stated <= RunFromResponses.PROMISED, "stated " + stated);
        assertTrue(fine.figures().answeredFrom().orElseThrow().estimatedError() < stated);
        for (int station = 0; station < fine.recording().series().size(); station++) {
            assertArrayEquals(
                    fine.recording().series().get(station).head(),
                    coarse.recording().series().get(station).head(),
                    stated,
                    "station " + station);
        }
        assertEquals(fine.limits().size(), coarse.limits().size());
    }
}
