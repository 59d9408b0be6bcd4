package org.headfall.solver.response;

import java.util.Arrays;

/**
 * Shifts, rates and times evenly spaced in their logarithm. Shifts go from the fastest change wanted to the slowest: each solve
 * has a good guess in those before.
 */
final class ShiftLadder {

    /** Smallest shift or rate as a share of the inverse of the longest time, so that the last times are met as well as the others. */
    private static final double SLOWEST = 0.3;

    private static final int TIMES_PER_DECADE = 12;

    private ShiftLadder() {}

    /**
     * Numbers from one to another.
     *
     * @param from the first
     * @param to the last, smaller or larger
     * @param perDecade how many a decade, at least
     */
    static double[] of(double from, double to, int perDecade) {
        int intervals = Math.max(1, (int) Math.ceil(perDecade * Math.abs(Math.log10(from / to))));
        double[] values = new double[intervals + 1];
        Arrays.setAll(values, i -> from * Math.pow(to / from, (double) i / intervals));
        return values;
    }

    /**
     * The shifts, or rates of modes, that responses up to some time follow from.
     *
     * @param fastest largest (1/d)
     * @param longest the time (d)
     * @param perDecade how many a decade, at least
     */
    static double[] until(double fastest, double longest, int perDecade) {
        return of(fastest, SLOWEST / longest, perDecade);
    }

    /**
     * Times at which responses are tabulated.
     *
     * @param first shortest (d)
     * @param longest longest (d)
     */
    static double[] times(double first, double longest) {
        double[] times = of(first, longest, TIMES_PER_DECADE);
        times[times.length - 1] = longest;
        return times;
    }
}
