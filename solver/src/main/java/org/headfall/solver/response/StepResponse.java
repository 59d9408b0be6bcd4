package org.headfall.solver.response;

import java.util.Arrays;

/**
 * Drawdown by a constant unit discharge as a sum of relaxing modes, {@code sum_m c_m (1 - exp(-mu_m t)) / mu_m}.
 *
 * @param decay rate of decay mu of each mode (1/d), not negative
 * @param weight c of each mode (1/m²)
 */
@SuppressWarnings("ArrayRecordComponent") // made, read and dropped within one loop
record StepResponse(double[] decay, double[] weight) {

    /** Drawdown per discharge at a time (d/m²). */
    double value(double time) {
        double sum = 0;
        for (int mode = 0; mode < decay.length; mode++) {
            sum += weight[mode] * relaxed(decay[mode], time);
        }
        return sum;
    }

    /**
     * Laplace transform of the response to an impulse (d/m²).
     *
     * @param shift the Laplace variable (1/d), positive
     */
    double transfer(double shift) {
        double sum = 0;
        for (int mode = 0; mode < decay.length; mode++) {
            sum += weight[mode] / (shift + decay[mode]);
        }
        return sum;
    }

    /** Integral of {@code exp(-decay t)} up to a time (d); a mode that does not decay, as in a closed aquifer, grows on. */
    static double relaxed(double decay, double time) {
        double x = decay * time;
        return x > 0 ? -Math.expm1(-x) / decay : time;
    }

    /** Rate of change of drawdown per discharge at a time (1/m²). */
    double rate(double time) {
        double sum = 0;
        for (int mode = 0; mode < decay.length; mode++) {
            sum += weight[mode] * Math.exp(-decay[mode] * time);
        }
        return sum;
    }

    /** Sum of this response and another. */
    StepResponse plus(StepResponse other) {
        return new StepResponse(joined(decay, other.decay), joined(weight, other.weight));
    }

    private static double[] joined(double[] first, double[] second) {
        double[] all = Arrays.copyOf(first, first.length + second.length);
        System.arraycopy(second, 0, all, first.length, second.length);
        return all;
    }

    /** This response times a factor. */
    StepResponse times(double factor) {
        return new StepResponse(
                decay, Arrays.stream(weight).map(w -> factor * w).toArray());
    }
}
