package org.headfall.solver.allocation;

/**
 * A cost of what a sum of variables is in excess of a bound: {@code weight t + curvature t^2 / 2} with
 * {@code t = max(0, coefficients x - bound)}. Convex, and so solved for as a variable t that is at least both.
 *
 * @param coefficients coefficient of each variable of the programme
 * @param bound the bound
 * @param weight cost of a unit in excess, not negative
 * @param curvature by how much that grows with each unit, not negative
 */
@SuppressWarnings("ArrayRecordComponent") // one number a variable, never compared
public record Excess(double[] coefficients, double bound, double weight, double curvature) {

    /**
     * Checks that it is convex.
     *
     * @throws IllegalArgumentException if weight or curvature is negative or not a number
     */
    public Excess {
        if (!(weight >= 0 && curvature >= 0)) {
            throw new IllegalArgumentException(
                    "the cost of an excess must not fall: weight " + weight + ", curvature " + curvature);
        }
    }

    /** How much values are in excess. */
    double of(double[] x) {
        double sum = -bound;
        for (int i = 0; i < x.length; i++) {
            sum += coefficients[i] * x[i];
        }
        return Math.max(0, sum);
    }

    /** Cost of values. */
    double costOf(double[] x) {
        double excess = of(x);
        return (weight + 0.5 * curvature * excess) * excess;
    }
}
