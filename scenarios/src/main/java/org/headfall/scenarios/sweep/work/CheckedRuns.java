package org.headfall.scenarios.sweep.work;

import java.io.IOException;
import java.util.Map;
import java.util.TreeMap;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.run.RunPlanner;
import org.headfall.scenarios.sweep.document.BaseScenario;
import org.headfall.scenarios.sweep.document.Input;
import org.headfall.scenarios.sweep.document.RunList;
import org.headfall.scenarios.sweep.document.SweepDocument;
import org.headfall.scenarios.sweep.document.Variable;
import org.headfall.scenarios.sweep.store.FailedRuns;

/**
 * Runs of a sweep whose scenarios were read and put on cells, and not made.
 *
 * @param looked how many were looked at
 * @param all how many there are
 * @param invalid those that are no valid scenarios, with the reasons that would be recorded
 */
public record CheckedRuns(int looked, int all, FailedRuns invalid) {

    private static final double NANOSECONDS = 1e-9;

    /** The part of 1 that lets numbers of a sequence fall evenly (Knuth, The Art of Computer Programming 3, section 6.4). */
    private static final double GOLDEN = 0.6180339887;

    /**
     * Looks at runs spread evenly over a sweep, until all have been looked at or the time is over.
     *
     * @param sweep the sweep
     * @param program program and version
     * @param seconds time after which no further run is looked at (s)
     * @throws IOException if a file cannot be read any more
     */
    public static CheckedRuns of(SweepDocument sweep, String program, double seconds) throws IOException {
        RunList runs = new RunList(sweep);
        Map<Integer, String> reasons = new TreeMap<>();
        long started = System.nanoTime();
        int step = step(runs.size());
        int looked = 0;
        while (looked < runs.size() && (System.nanoTime() - started) * NANOSECONDS <= seconds) {
            int index = (int) ((long) looked * step % runs.size());
            try {
                plan(sweep.base(), runs.get(index), program);
            } catch (InputException wrong) {
                reasons.put(index + 1, RunMaker.notValid(wrong));
            }
            looked++;
        }
        FailedRuns invalid = new FailedRuns();
        reasons.forEach(invalid::add);
        return new CheckedRuns(looked, runs.size(), invalid);
    }

    private static void plan(BaseScenario base, Map<Variable, Input> inputs, String program)
            throws InputException, IOException {
        RunPlanner.plan(base.read(base.with(inputs)), program, 1);
    }

    /** A step that meets every run once and passes over all of them soon. */
    private static int step(int size) {
        int step = Math.max(1, (int) (GOLDEN * size));
        while (gcd(step, size) > 1) {
            step++;
        }
        return step;
    }

    private static int gcd(int a, int b) {
        return b == 0 ? a : gcd(b, a % b);
    }
}
