package org.headfall.scenarios.sweep.work;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.headfall.scenarios.document.UsedFile;
import org.headfall.scenarios.sweep.document.Input;
import org.headfall.scenarios.sweep.document.SweepDocument;
import org.headfall.scenarios.sweep.document.Variable;
import org.headfall.scenarios.sweep.document.Variation;

/** The files that runs of a sweep are made of, besides its two documents. */
public final class FilesOfSweep {

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
            if (variable.variation() instanceof Variation.Listed listed && !variable.numeric()) {
                for (Input input : listed.inputs()) {
                    add(files, sweep, Map.of(variable, input));
                }
            }
        }
        return List.copyOf(files.values());
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
