package org.headfall.scenarios.sweep.work;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.headfall.scenarios.document.UsedFile;
import org.headfall.scenarios.sweep.document.Input;
import org.headfall.scenarios.sweep.document.SweepDocument;
import org.headfall.scenarios.sweep.document.Variable;
import org.headfall.scenarios.sweep.document.Variation;

/** The files that runs of a sweep are made of, besides its two documents. */
public final class FilesOfSweep {

    private static final double HALF = 0.5;

    private FilesOfSweep() {}

    /**
     * Every file that the base scenario names, or a value that the sweep puts into it.
     *
     * @param sweep the sweep
     * @return the files, by name relative to the folder of the base scenario
     * @throws IOException if one cannot be read any more
     */
    public static List<UsedFile> of(SweepDocument sweep) throws IOException {
        Map<String, UsedFile> files = new TreeMap<>();
        add(files, sweep, Map.of());
        for (Variable variable : sweep.variables()) {
            for (Input input : valuesThatNameFiles(variable)) {
                add(files, sweep, Map.of(variable, input));
            }
        }
        return List.copyOf(files.values());
    }

    /** Values that may name files, each file by one of them at least. */
    private static List<Input> valuesThatNameFiles(Variable variable) {
        Optional<Input> field = fields(variable);
        if (field.isPresent()) {
            return List.of(field.get());
        }
        return variable.variation() instanceof Variation.Listed listed && !variable.numeric()
                ? listed.inputs()
                : List.of();
    }

    /** One of the random fields that a variable stands for, if it does. */
    static Optional<Input> fields(Variable variable) {
        boolean listed = variable.variation() instanceof Variation.Listed
                && variable.variation().isDrawn();
        return listed || variable.variation() instanceof Variation.DrawnFields
                ? Optional.of(variable.variation().at(HALF))
                : Optional.empty();
    }

    private static void add(Map<String, UsedFile> files, SweepDocument sweep, Map<Variable, Input> inputs)
            throws IOException {
        String base = String.valueOf(sweep.base().document().getFileName());
        for (UsedFile file :
                sweep.base().read(sweep.base().with(inputs)).folder().usedFiles()) {
            if (!file.name().equals(base)) {
                files.put(file.name(), file);
            }
        }
    }
}
