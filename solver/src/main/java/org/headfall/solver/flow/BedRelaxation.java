package org.headfall.solver.flow;

import java.util.Arrays;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.SealingBed;
import org.jspecify.annotations.Nullable;

/**
 * Water given up by the sealing bed while it adjusts to the falling head below it, with a fixed head on top (Hantush
 * 1960), as a sum of relaxation terms. In Laplace space flow into the aquifer per area and metre of drawdown is {@code
 * K'/b' x coth x} with {@code x = b' sqrt(p Ss'/K')}. It is replaced by
 *
 * <pre>{@code x coth x = 1 + sum_k w_k p'/(p' + l_k) + w_fast p',   p' = p b'^2 Ss'/K'}</pre>
 *
 * with ten relaxation rates: each is one number a cell, {@code dm_k/dt = dh/dt - l_k K'/(b'^2 Ss') m_k}, eliminated
 * inside the implicit stage, so that the bed changes the diagonal and the right-hand side but not the pattern of the
 * matrix. The weights are a non-negative least-squares fit over p' from 1e-3 to 2e7 with the long-run storage
 * {@code sum w_k/l_k + w_fast = 1/3} held exactly: largest error 0.016 % in Laplace space, 1.2 % in the flow after a
 * sudden step of head at times above {@code 1e-6 b'^2 Ss'/K'}.
 *
 * <p>What does not change in a run stands here; what a run remembers, in {@link SealingBedStorage}. Terms are
 * kept in single precision: relative errors of 1e-7 of the water released, far below that of the fit. What they add to
 * the diagonal is not, so that it depends on the coefficient as smoothly as the reduced model of responses needs.
 */
final class BedRelaxation {

    static final double[] RATE = {
        10.0,
        55.50473077848115,
        308.07751387916727,
        1709.975946676698,
        9491.17545579685,
        52680.51384453321,
        292401.773821287,
        1622968.1735100863,
        9008241.153272057,
        49999999.99999999
    };

    static final double[] WEIGHT = {
        2.082467867225946,
        3.931330735306209,
        9.668216717744988,
        22.46026021447355,
        53.27995957226355,
        125.0188812317024,
        295.30414261993025,
        694.8710431924699,
        1623.6692085772884,
        4432.567168175895
    };

    /** Weight of the part that follows the head at once. */
    static final double FAST_WEIGHT = 4.6788302473971874e-05;

    private final double[] conductance;
    private final float[] diffusionRate;

    /** The same numbers in double precision: a loop that mixes the two is not vectorised. */
    private final double[] exactRate;

    /**
     * Relaxation of the sealing bed of a problem.
     *
     * @param problem the problem
     * @return the relaxation, null if there is no bed or it stores nothing
     */
    static @Nullable BedRelaxation of(FlowProblem problem) {
        return problem.sealingBed()
                .filter(SealingBed::stores)
                .map(bed -> new BedRelaxation(bed, problem.aquifer()))
                .orElse(null);
    }

    private BedRelaxation(SealingBed bed, Aquifer aquifer) {
        int cells = aquifer.grid().cellCount();
        conductance = new double[cells];
        diffusionRate = new float[cells];
        for (int cell = 0; cell < cells; cell++) {
            boolean stores =
                    aquifer.active()[cell] && bed.specificStorage()[cell] > 0 && bed.verticalConductivity()[cell] > 0;
            conductance[cell] = stores ? aquifer.grid().area(cell) * bed.leakance(cell) : 0;
            diffusionRate[cell] = stores ? (float) (1 / bed.responseTime(cell)) : 0;
        }
        exactRate = new double[cells];
        Arrays.setAll(exactRate, cell -> diffusionRate[cell]);
    }

    int cells() {
        return conductance.length;
    }

    /** Vertical conductance of the bed over each cell (m²/d), zero where it stores nothing. */
    double[] conductance() {
        return conductance;
    }

    /** Inverse of the response time of the bed over each cell (1/d). */
    float[] diffusionRate() {
        return diffusionRate;
    }

    /** Adds the storage of the part that follows the head at once (m²). */
    void addFastStorage(double[] storage) {
        for (int cell = 0; cell < storage.length; cell++) {
            if (conductance[cell] > 0) {
                storage[cell] += conductance[cell] * FAST_WEIGHT / diffusionRate[cell];
            }
        }
    }

    /**
     * Adds what the eliminated terms add to the diagonal of an implicit stage, {@code C' sum_k w_k / (1 + c l_k D)} with D
     * the diffusion rate and C' the conductance, for some cells.
     *
     * @param coefficient coefficient of the stage c (d)
     * @param diagonal added to (m²/d)
     * @param from first cell
     * @param to end of the cells
     */
    void addToDiagonal(double coefficient, double[] diagonal, int from, int to) {
        for (int term = 0; term < RATE.length; term++) {
            double weight = WEIGHT[term];
            double reach = coefficient * RATE[term];
            for (int cell = from; cell < to; cell++) {
                diagonal[cell] += conductance[cell] * weight / (1 + reach * exactRate[cell]);
            }
        }
    }

    /**
     * What the terms hold, or have released, per metre of drawdown of a solution in Laplace space, {@code C' sum_k w_k / (p +
     * l_k D)}, for some cells.
     *
     * @param shift the Laplace variable p (1/d), zero for an even fall that has lasted for ever
     * @param content receives it (m²)
     * @param from first cell
     * @param to end of the cells
     */
    void setContent(double shift, double[] content, int from, int to) {
        Arrays.fill(content, from, to, 0);
        for (int term = 0; term < RATE.length; term++) {
            for (int cell = from; cell < to; cell++) {
                if (conductance[cell] > 0) {
                    content[cell] += conductance[cell] * WEIGHT[term] / (shift + RATE[term] * exactRate[cell]);
                }
            }
        }
    }

    /**
     * Adds the derivative of what the terms add to the diagonal in Laplace space, {@code C' sum_k w_k l_k D / (p + l_k
     * D)^2}, for some cells.
     *
     * @param shift the Laplace variable p (1/d), zero for the steady state
     * @param sum added to (m²)
     * @param from first cell
     * @param to end of the cells
     */
    void addStorage(double shift, double[] sum, int from, int to) {
        for (int term = 0; term < RATE.length; term++) {
            for (int cell = from; cell < to; cell++) {
                double relaxation = RATE[term] * exactRate[cell];
                // A cell without a bed has neither relaxation nor conductance. A maximum would keep the loop from being
                // vectorised; what is added changes no other number.
                double time = 1 / (shift + relaxation + Double.MIN_NORMAL);
                sum[cell] += conductance[cell] * WEIGHT[term] * (relaxation * time) * time;
            }
        }
    }
}
