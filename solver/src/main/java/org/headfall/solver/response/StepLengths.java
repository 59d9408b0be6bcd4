package org.headfall.solver.response;

/**
 * Lengths of the steps over which discharges that follow head are taken as straight. By how far the discharge that a step
 * ends with lies off the straight line of the step before, its bend is known, and the mean distance between the bent discharge
 * and the straight one is a twelfth of the bend times the square of the length. The mean is what heads feel: later ones
 * entirely, and that at the end of the step no more than the mean, because what comes last counts most there and the distance
 * vanishes at the end.
 */
final class StepLengths {

    private static final double FIRST = 0.01;
    private static final double SHORTEST = 1e-4;

    /** Days are rounded, so the shortest step may come out a little longer; were it not to stand, it would be tried for ever. */
    private static final double ALWAYS_STANDS = 1.001 * SHORTEST;

    private static final double MOST_GROWTH = 4;
    private static final double MOST_CUT = 0.2;
    private static final double SAFETY = 0.9;
    private static final double TWELFTH = 1.0 / 12;

    private final double tolerance;
    private double wanted = FIRST;
    private double former;

    /** Length that the step after the next bend is tried with (d). */
    private double afterBend = Double.POSITIVE_INFINITY;

    private boolean bent;

    /**
     * Lengths for a tolerance.
     *
     * @param tolerance what a step may be off by (m of head)
     */
    StepLengths(double tolerance) {
        this.tolerance = tolerance;
    }

    /** Others that have come as far and go on by themselves. */
    StepLengths copy() {
        StepLengths copy = new StepLengths(tolerance);
        copy.wanted = wanted;
        copy.former = former;
        copy.afterBend = afterBend;
        copy.bent = bent;
        return copy;
    }

    /** Discharges jump: the next step is short, and nothing is known of what was before. */
    void startAnew() {
        wanted = FIRST;
        former = 0;
        bent = false;
    }

    /** Given discharges bend, and those that follow head with them: steps start short, as after bends before. */
    void bend() {
        wanted = Math.min(wanted, afterBend);
        bent = true;
    }

    /** Length of the next step (d), no longer than some time; a little longer than wanted rather than a sliver later. */
    double next(double longest) {
        return wanted * 1.5 < longest ? wanted : longest;
    }

    /** Whether the step before was straight from its beginning, so that bends can be told. */
    boolean knowsSlope() {
        return former > 0;
    }

    /**
     * Mean distance between a bent discharge and the straight one.
     *
     * @param off by how much it ends off the straight line of the step before (m³/d)
     * @param length length of the step (d)
     */
    double distance(double off, double length) {
        return TWELFTH * Math.abs(off) * 2 * length / (length + former);
    }

    /**
     * Judges a step.
     *
     * @param error what it is off by (m of head)
     * @param length its length (d)
     * @return whether it stands; if not it is to be tried again with the next length
     */
    boolean accept(double error, double length) {
        boolean stands = error <= 2 * tolerance || length <= ALWAYS_STANDS;
        double factor = error > 0 ? SAFETY * Math.sqrt(tolerance / error) : MOST_GROWTH;
        wanted = Math.max(SHORTEST, length * Math.max(MOST_CUT, Math.min(MOST_GROWTH, factor)));
        if (stands) {
            former = length;
            afterBend = bent ? wanted : afterBend;
            bent = false;
        }
        return stands;
    }
}
