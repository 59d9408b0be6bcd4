package org.headfall.solver.response;

import java.util.Arrays;

/**
 * Modes of a reduced model: each relaxes at one rate and is a sum of the solutions at the shifts.
 *
 * @param decay rate of decay of each mode (1/d), not negative
 * @param source how strongly the source drives each mode, and how much of it is seen there (1/m)
 * @param shares {@code [mode][shift]}: what each mode holds of the solution at each shift
 */
@SuppressWarnings("ArrayRecordComponent") // small matrices between two methods, never compared
record RelaxingModes(double[] decay, double[] source, double[][] shares) {

    /**
     * Weights of the solutions at the shifts that add up to the state some time after the source has begun to be 1.
     *
     * @param time the time (d)
     * @return one weight a shift (1/d for solutions of an impulse)
     */
    double[] stepWeights(double time) {
        double[] amounts = new double[decay.length];
        Arrays.setAll(amounts, mode -> source[mode] * StepResponse.relaxed(decay[mode], time));
        return weighted(amounts);
    }

    /**
     * Weights of the solutions at the shifts that add up to so much of each mode.
     *
     * @param amounts amount of each mode
     * @return one weight a shift
     */
    double[] weighted(double[] amounts) {
        double[] weights = new double[shares.length == 0 ? 0 : shares[0].length];
        for (int mode = 0; mode < decay.length; mode++) {
            for (int shift = 0; shift < weights.length; shift++) {
                weights[shift] += amounts[mode] * shares[mode][shift];
            }
        }
        return weights;
    }

    /**
     * Step response at a place.
     *
     * @param readings the solution at each shift as it is read there (d/m²)
     * @return the response, as far as the solutions carry it
     */
    StepResponse readBy(double[] readings) {
        double[] weight = new double[decay.length];
        for (int mode = 0; mode < decay.length; mode++) {
            double there = 0;
            for (int shift = 0; shift < readings.length; shift++) {
                there += shares[mode][shift] * readings[shift];
            }
            weight[mode] = source[mode] * there;
        }
        return new StepResponse(decay, weight);
    }
}
