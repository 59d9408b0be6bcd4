package org.headfall.solver.response;

import java.util.Arrays;

/** Shifts evenly spaced in their logarithm, from the fastest change wanted to the slowest: each solve has a good guess in those before. */
final class ShiftLadder {

    private ShiftLadder() {}

    /**
     * The shifts.
     *
     * @param fastest largest (1/d)
     * @param slowest smallest (1/d)
     * @param perDecade how many a decade, at least
     */
    static double[] of(double fastest, double slowest, int perDecade) {
        int intervals = Math.max(1, (int) Math.ceil(perDecade * Math.log10(fastest / slowest)));
        double[] values = new double[intervals + 1];
        Arrays.setAll(values, i -> fastest * Math.pow(slowest / fastest, (double) i / intervals));
        return values;
    }
}
