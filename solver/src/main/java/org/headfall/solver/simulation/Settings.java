package org.headfall.solver.simulation;

import org.headfall.solver.wording.PlainNumber;

/**
 * How exactly and with how many threads a simulation runs.
 *
 * @param accuracy largest error of head that one time step may make, by its own estimate (m), positive
 * @param largestStep longest time step (d), positive; infinity for no bound
 * @param threads threads of the linear solver, at least one; results do not depend on it
 */
public record Settings(double accuracy, double largestStep, int threads) {

    /** 1 mm, steps of any length, one thread. */
    public static final Settings DEFAULT = new Settings(0.001, Double.POSITIVE_INFINITY, 1);

    /** Checks the values. */
    public Settings {
        if (!(accuracy > 0 && largestStep > 0 && threads >= 1)) {
            throw new IllegalArgumentException("accuracy, largest step and threads must be positive, found "
                    + PlainNumber.of(accuracy) + " m, " + PlainNumber.of(largestStep) + " d, " + threads);
        }
    }

    /** The same accuracy and steps with another number of threads. */
    public Settings withThreads(int others) {
        return new Settings(accuracy, largestStep, others);
    }
}
