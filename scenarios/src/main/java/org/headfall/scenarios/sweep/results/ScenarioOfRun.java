package org.headfall.scenarios.sweep.results;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.document.UsedFile;
import org.headfall.scenarios.sweep.document.DocumentText;
import org.headfall.scenarios.sweep.document.RunList;
import org.headfall.scenarios.sweep.document.SweepDocument;

/** Gives a run of a sweep back as a scenario of its own: a folder with its document and the files that it names. */
public final class ScenarioOfRun {

    private ScenarioOfRun() {}

    /**
     * Writes the scenario.
     *
     * @param sweep the sweep
     * @param number number of the run
     * @param folder folder for the scenario, made if it is not there
     * @return the document, {@code scenario.yaml}
     * @throws IllegalArgumentException if the sweep has no such run
     * @throws IOException if a file cannot be read or written, or lies outside the folder of the base scenario
     */
    public static Path write(SweepDocument sweep, int number, Path folder) throws IOException {
        RunList runs = new RunList(sweep);
        if (number < 1 || number > runs.size()) {
            throw new IllegalArgumentException(
                    "runs of this sweep have numbers from 1 to " + runs.size() + ", found " + number);
        }
        DocumentNode changed = sweep.base().with(runs.get(number - 1));
        Files.createDirectories(folder);
        Path base = sweep.base().document();
        for (UsedFile file : sweep.base().read(changed).folder().usedFiles()) {
            if (!file.path().equals(base)) {
                copy(file, folder);
            }
        }
        String text = "# Run " + number + " of the sweep \"" + sweep.title() + "\".\n" + DocumentText.of(changed);
        return Files.writeString(folder.resolve("scenario.yaml"), text, StandardCharsets.UTF_8);
    }

    private static void copy(UsedFile file, Path folder) throws IOException {
        Path target = folder.resolve(file.name()).normalize();
        if (!target.startsWith(folder.normalize())) {
            throw new IOException(file.name() + ": lies outside the folder of the base scenario, so that a run that"
                    + " names it cannot be moved; copy it into that folder");
        }
        Files.createDirectories(Objects.requireNonNull(target.getParent()));
        if (!Files.exists(target)) {
            Files.copy(file.path(), target);
        }
    }
}
