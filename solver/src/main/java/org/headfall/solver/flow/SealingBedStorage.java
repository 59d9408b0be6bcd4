package org.headfall.solver.flow;

import java.util.Arrays;
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
    private final double[] weighted;
    private final double[][] released;
    private double[][][] stageMemory = new double[3][TERMS][];

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
        weighted = new double[cells];
        released = new double[3][cells];
        for (double[][] stage : stageMemory) {
            for (int term = 0; term < TERMS; term++) {
                stage[term] = new double[cells];
            }
        }
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
        Arrays.fill(weighted, 0);
        for (int term = 0; term < TERMS; term++) {
            double weight = WEIGHT[term];
            double reach = coefficient * RELAXATION_RATE[term];
            for (int cell = 0; cell < cells; cell++) {
                weighted[cell] += weight / (1 + reach * diffusionRate[cell]);
            }
        }
        for (int cell = 0; cell < cells; cell++) {
            diagonal[cell] += conductance[cell] * weighted[cell];
        }
    }

    /** Adds the flow released by the bed at a stage to the net inflow of each cell (m³/d). */
    void addFlow(int stage, double[] inflow) {
        double[] flow = released[stage - 1];
        for (int cell = 0; cell < cells; cell++) {
            inflow[cell] += flow[cell];
        }
    }

    /**
     * Prepares an implicit stage. With {@code known} the part of a memory that the earlier stages decide, the memory at
     * the stage is {@code (known + h - base) / (1 + c l)}; what does not depend on h goes to the right-hand side.
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
        Arrays.fill(weighted, 0);
        for (int term = 0; term < TERMS; term++) {
            double[] known = known(stage, term, baseWeight, rates);
            double weight = WEIGHT[term];
            double reach = coefficient * RELAXATION_RATE[term];
            for (int cell = 0; cell < cells; cell++) {
                weighted[cell] += weight * (known[cell] - base[cell]) / (1 + reach * diffusionRate[cell]);
            }
        }
        for (int cell = 0; cell < cells; cell++) {
            right[cell] -= conductance[cell] * weighted[cell];
        }
    }

    /** Known part of a memory: its start and the rates of the earlier stages. Kept where the stage's memory will be. */
    private double[] known(int stage, int term, double baseWeight, double[][] rates) {
        double[] start = stageMemory[0][term];
        double[] known = stageMemory[stage - 1][term];
        double[] first = rates[0];
        double relaxation = RELAXATION_RATE[term];
        if (stage == 2) {
            for (int cell = 0; cell < cells; cell++) {
                double decay = relaxation * diffusionRate[cell] * start[cell];
                known[cell] = start[cell] + baseWeight * (first[cell] - decay);
            }
            return known;
        }
        double[] second = rates[1];
        double[] middle = stageMemory[1][term];
        for (int cell = 0; cell < cells; cell++) {
            double decay = relaxation * diffusionRate[cell] * (start[cell] + middle[cell]);
            known[cell] = start[cell] + baseWeight * (first[cell] + second[cell] - decay);
        }
        return known;
    }

    /** Completes an implicit stage once its head is known. */
    void completeStage(int stage, double coefficient, double[] base, double[] head) {
        Arrays.fill(weighted, 0);
        for (int term = 0; term < TERMS; term++) {
            double[] values = stageMemory[stage - 1][term];
            double weight = WEIGHT[term];
            double reach = coefficient * RELAXATION_RATE[term];
            for (int cell = 0; cell < cells; cell++) {
                double value = (values[cell] + head[cell] - base[cell]) / (1 + reach * diffusionRate[cell]);
                values[cell] = value;
                weighted[cell] += weight * value;
            }
        }
        double[] flow = released[stage - 1];
        for (int cell = 0; cell < cells; cell++) {
            flow[cell] = -conductance[cell] * weighted[cell];
        }
    }

    /** The step stands: its last stage becomes the start of the next. */
    void accept() {
        stageMemory = new double[][][] {stageMemory[2], stageMemory[1], stageMemory[0]};
        System.arraycopy(released[2], 0, released[0], 0, cells);
    }

    /** Adds the flow released by the bed at a stage over all cells (m³/d), releases and takings apart. */
    void addFlows(int stage, FlowRates rates, int term) {
        for (double flow : released[stage - 1]) {
            rates.add(term, flow);
        }
    }
}
