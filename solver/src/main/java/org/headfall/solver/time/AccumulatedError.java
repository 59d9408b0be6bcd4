package org.headfall.solver.time;

/** The error that the steps of a run leave in its solution: signed estimates, fading as the system lets them fade. */
final class AccumulatedError {

    private final ImplicitSystem system;
    private final double[] total;

    AccumulatedError(ImplicitSystem system) {
        this.system = system;
        total = new double[system.size()];
    }

    /** Lets the error so far fade over a stretch (d). */
    void carry(double time) {
        system.errorAfter(time, total);
    }

    /** Adds what a step leaves at the end of the stretch, for some unknowns. */
    void add(double[] left, int from, int to) {
        for (int i = from; i < to; i++) {
            total[i] += left[i];
        }
    }

    double[] values() {
        return total;
    }
}
