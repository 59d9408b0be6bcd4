package org.headfall.solver.response;

import java.util.Arrays;
import java.util.List;

/**
 * States of the models of all sources, carried through time. In each step what a source gives or takes runs straight; it may
 * jump between steps. A mode y follows {@code dy/dt = q - mu y}, where q is what drives it; over a step of length t,
 * x = mu t,
 *
 * <pre>{@code y = y0 exp(-x) + t (q0 p1(x) + (q1 - q0) p2(x)),   p1 = (1 - exp(-x)) / x,   p2 = (1 - p1) / x}</pre>
 *
 * <p>and its integral is {@code y0 t p1 + t² (q0 p2 + (q1 - q0) p3)} with {@code p3 = (1/2 - p2) / x}, both exact.
 */
final class CarriedModes {

    /** Below this, series are more exact than differences. */
    private static final double SMALL = 0.5;

    /** Coefficients of {@code p3 = sum_k (-x)^k / (k + 3)!}. */
    private static final double[] SERIES = series(14);

    private final List<JointModes> models;
    private final int sources;
    private final int shifts;
    private final double[][] state;
    private final double[][] integral;

    /**
     * All at rest.
     *
     * @param models models that have all sources between them
     * @param sources number of sources
     * @param shifts number of shifts
     */
    CarriedModes(List<JointModes> models, int sources, int shifts) {
        this.models = models;
        this.sources = sources;
        this.shifts = shifts;
        state = noneOfEach(models);
        integral = noneOfEach(models);
    }

    private static double[][] noneOfEach(List<JointModes> models) {
        return models.stream().map(model -> new double[model.count()]).toArray(double[][]::new);
    }

    private static double[] series(int terms) {
        double[] coefficients = new double[terms];
        double term = 1.0 / 6;
        for (int k = 0; k < terms; k++) {
            coefficients[k] = term;
            term /= -(k + 4);
        }
        return coefficients;
    }

    /**
     * Carries on through a step.
     *
     * @param length its length (d)
     * @param begin amount of each source at its beginning (m³/d)
     * @param end amount of each source at its end (m³/d)
     */
    void advance(double length, double[] begin, double[] end) {
        for (int model = 0; model < state.length; model++) {
            advance(models.get(model), length, begin, end, state[model], integral[model]);
        }
    }

    private static void advance(
            JointModes modes, double length, double[] begin, double[] end, double[] y, double[] sum) {
        for (int m = 0; m < y.length; m++) {
            double x = modes.decay()[m] * length;
            double first;
            double second;
            double third;
            double left;
            if (x < SMALL) {
                third = third(x);
                second = 0.5 - x * third;
                first = 1 - x * second;
                left = 1 - x * first;
            } else {
                left = Math.exp(-x);
                first = (1 - left) / x;
                second = (1 - first) / x;
                third = (0.5 - second) / x;
            }
            double driven = modes.driven(m, begin);
            double growth = modes.driven(m, end) - driven;
            sum[m] += length * (first * y[m] + length * (second * driven + third * growth));
            y[m] = y[m] * left + length * (first * driven + second * growth);
        }
    }

    /** The function p3 of a small number. */
    private static double third(double x) {
        double sum = 0;
        for (int k = SERIES.length - 1; k >= 0; k--) {
            sum = sum * x + SERIES[k];
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
        for (double[] ofModel : integral) {
            Arrays.fill(ofModel, 0);
        }
        return weights;
    }

    private double[][] weights(double[][] amounts) {
        double[][] weights = new double[sources][shifts + 1];
        for (int model = 0; model < amounts.length; model++) {
            models.get(model).addWeights(amounts[model], weights);
        }
        return weights;
    }
}
