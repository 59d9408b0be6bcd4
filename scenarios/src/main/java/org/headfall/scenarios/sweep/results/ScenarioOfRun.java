package org.headfall.scenarios.sweep.results;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Objects;
import org.headfall.scenarios.assembly.RandomFieldOnGrid;
import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.document.UsedFile;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.raster.NetcdfRasterWriter;
import org.headfall.scenarios.raster.Raster;
import org.headfall.scenarios.reading.ScenarioReading;
import org.headfall.scenarios.run.RunPlanner;
import org.headfall.scenarios.scenario.Field;
import org.headfall.scenarios.scenario.RandomFields;
import org.headfall.scenarios.sweep.document.DocumentText;
import org.headfall.scenarios.sweep.document.KeyPath;
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
        ScenarioReading reading = sweep.base().read(changed);
        for (UsedFile file : reading.folder().usedFiles()) {
            if (!file.path().equals(base)) {
                copy(file, folder);
            }
        }
        Written written = withFieldsAsRasters(reading, changed, folder);
        String text = "# Run " + number + " of the sweep \"" + sweep.title() + "\".\n" + written.remarks()
                + DocumentText.of(written.document());
        return Files.writeString(folder.resolve("scenario.yaml"), text, StandardCharsets.UTF_8);
    }

    /** A document whose random fields are rasters, and what these were. */
    private record Written(DocumentNode document, String remarks) {}

    /** Writes random fields as rasters, for people who want to see them and programs that cannot draw them. */
    private static Written withFieldsAsRasters(ScenarioReading reading, DocumentNode changed, Path folder)
            throws IOException {
        DocumentNode document = changed;
        StringBuilder remarks = new StringBuilder();
        if (reading.scenario().isEmpty()) {
            return new Written(document, "");
        }
        for (Field.Random random : RandomFields.of(reading.scenario().get())) {
            String key = random.key().substring(0, random.key().lastIndexOf('.'));
            String name = key.replace('.', '-').replace('_', '-') + ".nc";
            String variable = key.substring(key.lastIndexOf('.') + 1);
            Raster raster = raster(reading, random);
            NetcdfRasterWriter.write(
                    folder.resolve(name), raster, variable, random.unit().isEmpty() ? "1" : random.unit());
            KeyPath path = path(key, document);
            remarks.append("# ").append(name).append(" is drawn from ").append(DocumentText.line(path.in(document)));
            remarks.append('\n');
            document = path.replaced(document, rasterNode(name));
        }
        return new Written(document, remarks.toString());
    }

    private static Raster raster(ScenarioReading reading, Field.Random random) throws IOException {
        try {
            return RandomFieldOnGrid.draw(
                    random, RunPlanner.plan(reading, "", 1).description().grid());
        } catch (InputException invalid) {
            throw new IOException("the run is no valid scenario: " + invalid.getMessage(), invalid);
        }
    }

    private static KeyPath path(String key, DocumentNode document) {
        try {
            return KeyPath.find(key, document);
        } catch (KeyPath.NoSuchKeyException impossible) {
            throw new IllegalStateException(key + " was read and is not there", impossible);
        }
    }

    private static DocumentNode rasterNode(String name) {
        Place place = Place.ofFile("scenario.yaml");
        return new DocumentNode.Mapping(
                place, List.of(new DocumentNode.Entry(place, "raster", new DocumentNode.Scalar(place, name, false))));
    }

    private static void copy(UsedFile file, Path folder) throws IOException {
        Path target = folder.resolve(file.name()).normalize();
        if (!target.startsWith(folder.normalize())) {
            throw new IOException(file.name() + ": lies outside the folder of the base scenario, so that a run that"
                    + " names it cannot be moved; copy it into that folder");
        }
        Files.createDirectories(Objects.requireNonNull(target.getParent()));
        // A copy of an earlier time may be of a file that has changed since.
        Files.copy(file.path(), target, StandardCopyOption.REPLACE_EXISTING);
    }
}
