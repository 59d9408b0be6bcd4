package org.headfall.scenarios.report;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.results.RunOutput;
import org.headfall.scenarios.run.RunPlanner;
import org.headfall.scenarios.run.ScenarioRun;

/** Runs the document of a test by one thread. */
final class DocumentRun {

    private DocumentRun() {}

    /**
     * Runs.
     *
     * @param document the scenario document
     * @param results folder that is made for the results
     * @param outputs what is written besides heads and levels
     */
    static FinishedRun into(Path document, Path results, List<RunOutput> outputs) throws IOException, InputException {
        return new ScenarioRun(
                        RunPlanner.plan(
                                ScenarioReader.read(document, FileReach.FOLDER_OF_DOCUMENT), "Headfall test", 1),
                        outputs,
                        (stage, fraction) -> {})
                .into(results, false);
    }
}
