package org.headfall.solver.response;

import org.ejml.data.DMatrixRMaj;

/**
 * Modes of a joint model of some sources: each relaxes at one rate, is driven by every source, and is a sum of solutions at
 * the shifts and of an even fall of all heads.
 *
 * @param sources numbers of the sources among all
 * @param shifts number of shifts
 * @param solutions the solutions that modes are sums of, each numbered source after source and shift after shift
 * @param decay rate of decay of each mode (1/d), not negative
 * @param drive how strongly each source, a column, drives each mode, a row (1/m)
 * @param shares what each mode, a row, holds of an even fall, the first column, and of the solutions
 */
@SuppressWarnings("ArrayRecordComponent") // small matrices between two methods, never compared
record JointModes(int[] sources, int shifts, int[] solutions, double[] decay, DMatrixRMaj drive, DMatrixRMaj shares) {

    int count() {
        return decay.length;
    }

    /**
     * How strongly a mode is driven when each source gives so much (m²/d).
     *
     * @param mode the mode
     * @param amounts amount of each of all sources (m³/d)
     */
    double driven(int mode, double[] amounts) {
        double sum = 0;
        int row = mode * sources.length;
        for (int i = 0; i < sources.length; i++) {
            sum += drive.data[row + i] * amounts[sources[i]];
        }
        return sum;
    }

    /**
     * Adds the weights of the solutions that add up to so much of each mode.
     *
     * @param amounts amount of each mode
     * @param weights {@code [source][shift]} receives the weights; that of an even fall goes to the first of these sources,
     *     after those of its shifts
     */
    void addWeights(double[] amounts, double[][] weights) {
        double[] sum = new double[1 + solutions.length];
        for (int mode = 0; mode < amounts.length; mode++) {
            int row = mode * sum.length;
            double amount = amounts[mode];
            for (int k = 0; k < sum.length; k++) {
                sum[k] += amount * shares.data[row + k];
            }
        }
        weights[sources[0]][shifts] += sum[0];
        for (int k = 0; k < solutions.length; k++) {
            weights[sources[solutions[k] / shifts]][solutions[k] % shifts] += sum[k + 1];
        }
    }
}
