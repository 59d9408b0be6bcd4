package org.headfall.solver.response;

/** What a step of some length does to each mode, for all superpositions that take the same steps. Used by one thread. */
final class StepFactors {

    /** Below this the series is more exact than the difference. */
    private static final double SMALL = 1e-5;

    /** Beyond this nothing of a double is left of {@code 1 + exp(-x)} but 1. */
    private static final double SETTLED = 37;

    private final SharedModes modes;
    private final double[] rest;
    private final double[] held;
    private final double[] grown;
    private double length = Double.NaN;
    private int settled;

    StepFactors(SharedModes modes) {
        this.modes = modes;
        rest = new double[modes.rates().length];
        held = new double[rest.length];
        grown = new double[rest.length];
    }

    /** Prepares for steps of a length (d). */
    void prepare(double stepLength) {
        if (stepLength == length) {
            return;
        }
        length = stepLength;
        settled = 0;
        while (settled < rest.length && modes.rates()[settled] * length > SETTLED) {
            settled++;
        }
        for (int m = 0; m < rest.length; m++) {
            double x = modes.rates()[m] * length;
            held[m] = -Math.expm1(-x);
            rest[m] = 1 - held[m];
            grown[m] = x < SMALL ? x * (0.5 - x / 6) : 1 - held[m] / x;
        }
    }

    SharedModes modes() {
        return modes;
    }

    /** How many of the modes, fastest first, have forgotten all that was before the step. */
    int settled() {
        return settled;
    }

    /** What is left of what a mode felt, {@code exp(-x)}; not to be changed. */
    double[] rest() {
        return rest;
    }

    /** What a mode feels of a discharge that holds throughout, {@code 1 - exp(-x)}; not to be changed. */
    double[] held() {
        return held;
    }

    /** What a mode feels of a discharge that grows evenly from none, {@code 1 - (1 - exp(-x)) / x}; not to be changed. */
    double[] grown() {
        return grown;
    }
}
