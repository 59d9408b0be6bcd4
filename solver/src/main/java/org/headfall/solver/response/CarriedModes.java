package org.headfall.solver.response;

import java.util.Arrays;

/**
 * States of the models of all sources, carried through time. In each step what a source gives or takes runs straight; it may
 * jump between steps. A mode y follows {@code dy/dt = c q - mu y}; over a step of length t, x = mu t,
 *
 * <pre>{@code y = y0 exp(-x) + c t (q0 p1(x) + (q1 - q0) p2(x)),   p1 = (1 - exp(-x)) / x,   p2 = (1 - p1) / x}</pre>
 *
 * <p>and its integral is {@code y0 t p1 + c t² (q0 p2 + (q1 - q0) p3)} with {@code p3 = (1/2 - p2) / x}, both exact.
 */
final class CarriedModes {

    /** Below this, series are more exact than differences. */
    private static final double SMALL = 0.5;

    private static final int TERMS = 14;

    private final RelaxingModes[] models;
    private final double[][] state;
    private final double[][] integral;
    private final boolean[] moved;

    /** All at rest, for the models of some sources. */
    CarriedModes(RelaxingModes[] models) {
        this.models = models;
        state = new double[models.length][];
        integral = new double[models.length][];
        for (int source = 0; source < models.length; source++) {
            state[source] = new double[models[source].decay().length];
            integral[source] = new double[state[source].length];
        }
        moved = new boolean[models.length];
    }

    /**
     * Carries on through a step.
     *
     * @param length its length (d)
     * @param begin amount of each source at its beginning (m³/d)
     * @param end amount of each source at its end (m³/d)
     */
    void advance(double length, double[] begin, double[] end) {
        for (int source = 0; source < models.length; source++) {
            // What has never moved anything needs no account.
            moved[source] |= begin[source] != 0 || end[source] != 0;
            if (moved[source]) {
                advance(source, length, begin[source], end[source] - begin[source]);
            }
        }
    }

    private void advance(int source, double length, double begin, double growth) {
        double[] decay = models[source].decay();
        double[] driven = models[source].source();
        double[] y = state[source];
        for (int m = 0; m < y.length; m++) {
            double x = decay[m] * length;
            double third = third(x);
            double second = x < SMALL ? 0.5 - x * third : (1 - (-Math.expm1(-x) / x)) / x;
            double first = 1 - x * second;
            double amount = driven[m] * length;
            integral[source][m] += length * (first * y[m] + amount * (second * begin + third * growth));
            y[m] = y[m] * Math.exp(-x) + amount * (first * begin + second * growth);
        }
    }

    /** {@code p3 = sum_k (-x)^k / (k + 3)!}. */
    private static double third(double x) {
        if (x >= SMALL) {
            double second = (1 + Math.expm1(-x) / x) / x;
            return (0.5 - second) / x;
        }
        double sum = 0;
        double term = 1.0 / 6;
        for (int k = 0; k < TERMS; k++) {
            sum += term;
            term *= -x / (k + 4);
        }
        return sum;
    }

    /** Weights of the solutions of each source that add up to its present state, {@code [source][shift]}. */
    double[][] weights() {
        return weights(state);
    }

    /** Weights that add up to the integral of the state since it was last asked for, and begins it anew. */
    double[][] takeIntegral() {
        double[][] weights = weights(integral);
        for (double[] ofSource : integral) {
            Arrays.fill(ofSource, 0);
        }
        return weights;
    }

    private double[][] weights(double[][] amounts) {
        double[][] weights = new double[models.length][];
        Arrays.setAll(weights, source -> models[source].weighted(amounts[source]));
        return weights;
    }
}
