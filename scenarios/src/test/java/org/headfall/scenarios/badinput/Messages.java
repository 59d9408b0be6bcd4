package org.headfall.scenarios.badinput;

import java.io.IOException;
import java.nio.file.Path;
import java.util.stream.Collectors;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.run.RunPlanner;

/** What the commands {@code check} and {@code run} say of a scenario document. */
final class Messages {
    private Messages() {}

    /** The messages, one a line; nothing if the scenario could be run. */
    static String of(Path document) throws IOException {
        return of(document, FileReach.FOLDER_OF_DOCUMENT);
    }

    /** The messages if the document may name the files of a reach. */
    static String of(Path document, FileReach reach) throws IOException {
        try {
            RunPlanner.plan(ScenarioReader.read(document, reach), "a test", 1);
            return "";
        } catch (InputException wrong) {
            return wrong.problems().stream().map(problem -> problem + "\n").collect(Collectors.joining());
        }
    }
}
