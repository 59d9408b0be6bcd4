package org.headfall.scenarios.interpolation;

import java.util.function.DoubleUnaryOperator;

/**
 * Values at points. Immutable.
 */
public final class ScatteredValues {
    /** The most points: kriging takes memory with their square and time with their cube. */
    public static final int MOST_POINTS = 2000;

    private final double[] x;
    private final double[] y;
    private final double[] values;

    /**
     * Values at points, which are copied.
     *
     * @param x eastings (m)
     * @param y northings (m)
     * @param values the values, one a point
     * @throws IllegalArgumentException if there is no point, more than {@value #MOST_POINTS}, a number that is not
     *     finite, or two points in one place
     */
    public ScatteredValues(double[] x, double[] y, double[] values) {
        if (x.length == 0 || x.length > MOST_POINTS || x.length != y.length || x.length != values.length) {
            throw new IllegalArgumentException("values at points need 1 to " + MOST_POINTS + " points, found "
                    + x.length + " x, " + y.length + " y and " + values.length + " values");
        }
        this.x = x.clone();
        this.y = y.clone();
        this.values = values.clone();
        for (int i = 0; i < x.length; i++) {
            requireOwnPlace(i);
        }
    }

    private void requireOwnPlace(int point) {
        if (!Double.isFinite(x[point] + y[point] + values[point])) {
            throw new IllegalArgumentException(describe(point) + " is not finite");
        }
        for (int other = 0; other < point; other++) {
            if (x[other] == x[point] && y[other] == y[point]) {
                throw new IllegalArgumentException(describe(point) + " stands where point " + other + " does");
            }
        }
    }

    private String describe(int point) {
        return "point " + point + " (x " + x[point] + ", y " + y[point] + ", value " + values[point] + ")";
    }

    /** {@return the number of points} */
    public int count() {
        return x.length;
    }

    double x(int point) {
        return x[point];
    }

    double y(int point) {
        return y[point];
    }

    double value(int point) {
        return values[point];
    }

    double distance(int one, int other) {
        double dx = x[one] - x[other];
        double dy = y[one] - y[other];
        return Math.sqrt(dx * dx + dy * dy);
    }

    boolean allEqual() {
        for (double value : values) {
            if (value != values[0]) {
                return false;
            }
        }
        return true;
    }

    ScatteredValues map(DoubleUnaryOperator operation) {
        double[] mapped = new double[values.length];
        for (int i = 0; i < mapped.length; i++) {
            mapped[i] = operation.applyAsDouble(values[i]);
        }
        return new ScatteredValues(x, y, mapped);
    }
}
