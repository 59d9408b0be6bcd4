package org.headfall.scenarios.sweep.work;

import java.nio.file.Path;
import java.util.List;
import org.headfall.scenarios.sweep.document.RunList;
import org.headfall.scenarios.sweep.document.SweepDocument;

/**
 * Runs that are to be made.
 *
 * @param sweep the sweep
 * @param document its file
 * @param runs what each run of the sweep gets
 * @param numbers numbers of those that are not recorded yet
 * @param program program and version
 * @param settings how the sweep is computed
 * @param folder where results go
 */
public record WantedRuns(
        SweepDocument sweep,
        Path document,
        RunList runs,
        List<Integer> numbers,
        String program,
        SweepSettings settings,
        Path folder) {

    /** Copies the numbers. */
    public WantedRuns {
        numbers = List.copyOf(numbers);
    }
}
