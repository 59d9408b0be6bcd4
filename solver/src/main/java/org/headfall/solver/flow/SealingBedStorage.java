package org.headfall.solver.flow;

import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.SealingBed;

/**
 * Water given up by the sealing bed while it adjusts to the falling head below it, with a fixed head on top (Hantush
 * 1960). In Laplace space flow into the aquifer per area and metre of drawdown is {@code K'/b' x coth x} with
 * {@code x = b' sqrt(p Ss'/K')}. It is replaced by
 *
 * <pre>{@code x coth x = 1 + sum_k w_k p'/(p' + l_k) + w_fast p',   p' = p b'^2 Ss'/K'}</pre>
 *
 * with ten relaxation rates: each is one number a cell, {@code dm_k/dt = dh/dt - l_k K'/(b'^2 Ss') m_k}, eliminated
 * inside the implicit stage, so that the bed changes the diagonal and the right-hand side but not the pattern of the
 * matrix. The weights are a non-negative least-squares fit over p' from 1e-3 to 2e7 with the long-run storage
 * {@code sum w_k/l_k + w_fast = 1/3} held exactly: largest error 0.016 % in Laplace space, 1.2 % in the flow after a
 * sudden step of head at times above {@code 1e-6 b'^2 Ss'/K'}.
 */
final class SealingBedStorage {

    static final double[] RELAXATION_RATE = {
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

    private static final int TERMS = RELAXATION_RATE.length;

    private final int cells;
    private final double[] conductance;
    private final double[] diffusionRate;
    private final double[] memory;
    private final double[] known;
    private final double[][] stageMemory;

    /** {@code 1 / (1 + c l)} of each term for the last reach {@code c K'/(b'^2 Ss')} asked for: most beds have one. */
    private final double[] damping = new double[TERMS];

    private double dampingReach = Double.NaN;

    /**
     * Storage of a bed.
     *
     * @param bed the bed
     * @param aquifer the aquifer below it
     */
    SealingBedStorage(SealingBed bed, Aquifer aquifer) {
        cells = aquifer.grid().cellCount();
        conductance = new double[cells];
        diffusionRate = new double[cells];
        for (int cell = 0; cell < cells; cell++) {
            boolean stores =
                    aquifer.active()[cell] && bed.specificStorage()[cell] > 0 && bed.verticalConductivity()[cell] > 0;
            conductance[cell] = stores ? aquifer.grid().area(cell) * bed.leakance(cell) : 0;
            diffusionRate[cell] = stores ? 1 / bed.responseTime(cell) : 0;
        }
        memory = new double[TERMS * cells];
        known = new double[TERMS * cells];
        stageMemory = new double[][] {memory, new double[TERMS * cells], new double[TERMS * cells]};
    }

    /** Adds the storage of the part that follows the head at once (m²). */
    void addFastStorage(double[] storage) {
        for (int cell = 0; cell < cells; cell++) {
            if (conductance[cell] > 0) {
                storage[cell] += conductance[cell] * FAST_WEIGHT / diffusionRate[cell];
            }
        }
    }

    /** Adds what the eliminated memories add to the diagonal of an implicit stage (m²/d). */
    void addToDiagonal(double coefficient, double[] diagonal) {
        for (int cell = 0; cell < cells; cell++) {
            double[] factor = damping(coefficient * diffusionRate[cell]);
            double sum = 0;
            for (int term = 0; term < TERMS; term++) {
                sum += WEIGHT[term] * factor[term];
            }
            diagonal[cell] += conductance[cell] * sum;
        }
    }

    private double[] damping(double reach) {
        if (reach != dampingReach) {
            for (int term = 0; term < TERMS; term++) {
                damping[term] = 1 / (1 + reach * RELAXATION_RATE[term]);
            }
            dampingReach = reach;
        }
        return damping;
    }

    /** Flow released by the bed at the start of the step, added to the net inflow of each cell (m³/d). */
    void addFlow(int stage, double[] inflow) {
        double[] values = stageMemory[stage - 1];
        for (int cell = 0; cell < cells; cell++) {
            if (conductance[cell] > 0) {
                inflow[cell] -= conductance[cell] * weightedSum(values, cell);
            }
        }
    }

    private static double weightedSum(double[] values, int cell) {
        int at = cell * TERMS;
        double sum = 0;
        for (int term = 0; term < TERMS; term++) {
            sum += WEIGHT[term] * values[at + term];
        }
        return sum;
    }

    /**
     * Prepares an implicit stage: the memories are {@code (known + h - base) / (1 + c l)}; their known part goes to the
     * right-hand side.
     *
     * @param stage 2 or 3
     * @param baseWeight weight of the rates of the earlier stages (d)
     * @param coefficient weight of the stage's own rate, c (d)
     * @param rates rates of head of the earlier stages (m/d)
     * @param base known part of the head (m)
     * @param right right-hand side of the stage, changed (m³/d)
     */
    void prepareStage(
            int stage, double baseWeight, double coefficient, double[][] rates, double[] base, double[] right) {
        for (int cell = 0; cell < cells; cell++) {
            if (conductance[cell] == 0) {
                continue;
            }
            double[] factor = damping(coefficient * diffusionRate[cell]);
            double rate = rates[0][cell] + (stage == 3 ? rates[1][cell] : 0);
            double sum = 0;
            for (int term = 0; term < TERMS; term++) {
                int at = cell * TERMS + term;
                double relaxation = diffusionRate[cell] * RELAXATION_RATE[term];
                double earlier = memory[at] + (stage == 3 ? stageMemory[1][at] : 0);
                known[at] = memory[at] + baseWeight * (rate - relaxation * earlier);
                sum += WEIGHT[term] * (known[at] - base[cell]) * factor[term];
            }
            right[cell] -= conductance[cell] * sum;
        }
    }

    /** Completes an implicit stage once its head is known. */
    void completeStage(int stage, double coefficient, double[] base, double[] head) {
        double[] values = stageMemory[stage - 1];
        for (int cell = 0; cell < cells; cell++) {
            if (conductance[cell] == 0) {
                continue;
            }
            double[] factor = damping(coefficient * diffusionRate[cell]);
            double change = head[cell] - base[cell];
            for (int term = 0; term < TERMS; term++) {
                int at = cell * TERMS + term;
                values[at] = (known[at] + change) * factor[term];
            }
        }
    }

    /** The step stands: its last stage becomes the memory. */
    void accept() {
        System.arraycopy(stageMemory[2], 0, memory, 0, memory.length);
    }

    /** Sum over all cells of the flow released by the bed at a stage (m³/d), releases and takings apart. */
    void addFlows(int stage, FlowRates rates, int term) {
        double[] values = stageMemory[stage - 1];
        for (int cell = 0; cell < cells; cell++) {
            if (conductance[cell] > 0) {
                rates.add(term, -conductance[cell] * weightedSum(values, cell));
            }
        }
    }
}
