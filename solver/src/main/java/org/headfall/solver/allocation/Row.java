package org.headfall.solver.allocation;

/**
 * A linear bound: {@code sum a_i x_i <= bound}.
 *
 * @param coefficients a, one a variable; not copied, must not change
 * @param bound the bound
 * @param givesWay what a unit beyond the bound costs where bounds contradict each other; infinite if it must be kept
 */
@SuppressWarnings("ArrayRecordComponent") // a long row, shared and never compared
public record Row(double[] coefficients, double bound, double givesWay) {

    /** The same row with another bound. */
    public Row withBound(double other) {
        return new Row(coefficients, other, givesWay);
    }

    /** What is left of the bound, negative if it is broken. */
    public double left(double[] x) {
        double left = bound;
        for (int i = 0; i < x.length; i++) {
            left -= coefficients[i] * x[i];
        }
        return left;
    }

    /** Whether it may give way where bounds contradict each other. */
    boolean mayGiveWay() {
        return Double.isFinite(givesWay);
    }
}
