package org.headfall.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.document.ParsedDocument;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.reading.ScenarioReading;
import org.headfall.scenarios.sweep.document.SweepDocument;
import org.headfall.scenarios.sweep.document.SweepReader;
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

    /** What is named, parsed: the document of a scenario, or of a sweep, also that of a folder that has no scenario. */
    ParsedDocument parse() {
        Path sweep = scenario.resolve("sweep.yaml");
        if (!Files.exists(document()) && Files.isRegularFile(sweep)) {
            ParsedDocument parsed = ParsedDocument.of(sweep);
            if (SweepReader.isSweep(parsed)) {
                return parsed;
            }
        }
        return ParsedDocument.of(document());
    }

    /** Reads a sweep, and its base scenario, with what is allowed to a scenario. */
    SweepDocument readSweep(ParsedDocument sweep) throws InputException, IOException {
        return SweepReader.read(sweep, reach(), ProgramVersion.text());
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

    /**
     * Reads the document and the tables beside it.
     *
     * @throws InputException if it is a sweep document
     */
    ScenarioReading read() throws InputException {
        return read(parse());
    }

    /**
     * Reads a scenario, and the tables beside its document.
     *
     * @throws InputException if it is a sweep document
     */
    ScenarioReading read(ParsedDocument document) throws InputException {
        if (SweepReader.isSweep(document)) {
            String name = String.valueOf(document.file().getFileName());
            Finding finding = Finding.of(
                    ProblemKind.WRONG_TYPE, "a sweep document", "a scenario; headfall sweep makes the runs of a sweep");
            throw new InputException(List.of(finding.at(Place.ofFile(name), name)));
        }
        return ScenarioReader.read(document, reach());
    }

    private FileReach reach() {
        return outsideFiles ? FileReach.ANYWHERE : FileReach.FOLDER_OF_DOCUMENT;
    }
}
