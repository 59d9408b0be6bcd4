package org.headfall.solver.allocation;

/**
 * A linear bound: {@code sum a_i x_i <= bound}.
 *
 * @param name unique name
 * @param coefficients a, one a variable; not copied, must not change
 * @param bound the bound
 * @param givesWay what a unit beyond the bound costs where bounds contradict each other; infinite if it must be kept
 */
@SuppressWarnings("ArrayRecordComponent") // a long row, shared and never compared
public record Row(String name, double[] coefficients, double bound, double givesWay) {

    /** The same row with another bound. */
    public Row withBound(double other) {
        return new Row(name, coefficients, other, givesWay);
    }

    /** Value of the left side. */
    public double value(double[] x) {
        double sum = 0;
        for (int i = 0; i < x.length; i++) {
            sum += coefficients[i] * x[i];
        }
        return sum;
    }
}
