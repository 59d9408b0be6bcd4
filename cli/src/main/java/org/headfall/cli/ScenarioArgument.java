package org.headfall.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.reading.ScenarioReading;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** How every command is told which scenario to read. */
final class ScenarioArgument {

    @Parameters(paramLabel = "SCENARIO", description = "Scenario document, or a folder with a scenario.yaml in it.")
    @SuppressWarnings("NullAway.Init") // set by picocli before the command is called
    private Path scenario;

    @Option(names = "--allow-outside-files", description = "Let the document name files outside its own folder.")
    private boolean outsideFiles;

    /** The document. */
    Path document() {
        return Files.isDirectory(scenario) ? scenario.resolve("scenario.yaml") : scenario;
    }

    /** Where results go if nothing else is asked for: {@code results/NAME} beside the document {@code NAME.yaml}. */
    Path resultsFolder() {
        return resultsFolder("");
    }

    /** The same with something added to the name. */
    Path resultsFolder(String ending) {
        String name = String.valueOf(document().getFileName()).replaceFirst("\\.[^.]+$", "");
        return document().resolveSibling("results").resolve(name + ending);
    }

    /** Reads the document and the tables beside it. */
    ScenarioReading read() {
        return ScenarioReader.read(document(), outsideFiles ? FileReach.ANYWHERE : FileReach.FOLDER_OF_DOCUMENT);
    }
}
