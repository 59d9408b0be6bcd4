package org.headfall.solver.flow;

import java.util.Arrays;

/**
 * What the relaxation terms of the sealing bed remember in one run, through the stages of its time steps. Cells are
 * worked through in tiles small enough that all terms of a tile find its heads in the fastest cache, copied to where
 * all arrays of a loop have the same index: only then does the compiler vectorise it.
 */
final class SealingBedStorage {

    private static final int TILE = 512;
    private static final int TERMS = BedRelaxation.RATE.length;

    private final BedRelaxation relaxation;
    private final int cells;
    private final double[][] released;
    private final double[] known;
    private final float[] change = new float[TILE];
    private final float[] sum = new float[TILE];
    private final float[] diffusion = new float[TILE];
    private final float[] start = new float[TILE];
    private final float[] decaying = new float[TILE];
    private final float[] values = new float[TILE];
    private float[][][] memory = new float[3][TERMS][];

    /** Nothing remembered yet: the bed has adjusted. */
    SealingBedStorage(BedRelaxation relaxation) {
        this.relaxation = relaxation;
        cells = relaxation.cells();
        released = new double[3][cells];
        known = new double[cells];
        for (float[][] stage : memory) {
            for (int term = 0; term < TERMS; term++) {
                stage[term] = new float[cells];
            }
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
        for (int from = 0; from < cells; from += TILE) {
            int length = Math.min(TILE, cells - from);
            for (int i = 0; i < length; i++) {
                double rate = stage == 2 ? rates[0][from + i] : rates[0][from + i] + rates[1][from + i];
                change[i] = (float) (baseWeight * rate);
            }
            System.arraycopy(relaxation.diffusionRate(), from, diffusion, 0, length);
            Arrays.fill(sum, 0);
            for (int term = 0; term < TERMS; term++) {
                addKnown(stage, term, from, length, (float) baseWeight, (float) coefficient);
            }
            for (int i = 0; i < length; i++) {
                known[from + i] = sum[i];
            }
        }
        double[] damping = relaxation.damping(coefficient);
        double[] conductance = relaxation.conductance();
        for (int cell = 0; cell < cells; cell++) {
            right[cell] -= conductance[cell] * (known[cell] - damping[cell] * base[cell]);
        }
    }

    /** Known part of a memory, kept where the stage's memory will be, and its share in the flow. */
    private void addKnown(int stage, int term, int from, int length, float baseWeight, float coefficient) {
        System.arraycopy(memory[0][term], from, start, 0, length);
        if (stage == 3) {
            float[] second = memory[1][term];
            for (int i = 0; i < length; i++) {
                decaying[i] = start[i] + second[from + i];
            }
        } else {
            System.arraycopy(start, 0, decaying, 0, length);
        }
        float decay = (float) (baseWeight * BedRelaxation.RATE[term]);
        for (int i = 0; i < length; i++) {
            values[i] = start[i] + change[i] - decay * diffusion[i] * decaying[i];
        }
        System.arraycopy(values, 0, memory[stage - 1][term], from, length);
        float weight = (float) BedRelaxation.WEIGHT[term];
        float reach = (float) (coefficient * BedRelaxation.RATE[term]);
        for (int i = 0; i < length; i++) {
            sum[i] += weight * values[i] / (1 + reach * diffusion[i]);
        }
    }

    /** Completes an implicit stage once its head is known. */
    void completeStage(int stage, double coefficient, double[] base, double[] head) {
        for (int from = 0; from < cells; from += TILE) {
            int length = Math.min(TILE, cells - from);
            System.arraycopy(relaxation.diffusionRate(), from, diffusion, 0, length);
            for (int i = 0; i < length; i++) {
                change[i] = (float) (head[from + i] - base[from + i]);
            }
            for (int term = 0; term < TERMS; term++) {
                System.arraycopy(memory[stage - 1][term], from, values, 0, length);
                float reach = (float) (coefficient * BedRelaxation.RATE[term]);
                for (int i = 0; i < length; i++) {
                    values[i] = (values[i] + change[i]) / (1 + reach * diffusion[i]);
                }
                System.arraycopy(values, 0, memory[stage - 1][term], from, length);
            }
        }
        double[] damping = relaxation.damping(coefficient);
        double[] conductance = relaxation.conductance();
        double[] flow = released[stage - 1];
        for (int cell = 0; cell < cells; cell++) {
            flow[cell] = -conductance[cell] * (known[cell] + damping[cell] * (head[cell] - base[cell]));
        }
    }

    /** The step stands: its last stage becomes the start of the next. */
    void accept() {
        memory = new float[][][] {memory[2], memory[1], memory[0]};
        System.arraycopy(released[2], 0, released[0], 0, cells);
    }

    /** Adds the flow released by the bed at a stage over all cells (m³/d), releases and takings apart. */
    void addFlows(int stage, FlowRates rates, int term) {
        double release = 0;
        double taking = 0;
        for (double flow : released[stage - 1]) {
            if (flow > 0) {
                release += flow;
            } else {
                taking += flow;
            }
        }
        rates.add(term, release);
        rates.add(term, taking);
    }
}
