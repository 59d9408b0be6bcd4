package org.headfall.solver.flow;

import java.util.Arrays;
import org.headfall.solver.linear.WorkerTeam;

/**
 * What the relaxation terms of the sealing bed remember in one run, through the stages of its time steps. Cells are
 * worked through in tiles small enough that all terms of a tile find its heads in the fastest cache. All arrays of a loop
 * over terms are in single precision, have the same index, and are at most six: only then does the compiler vectorise it.
 */
final class SealingBedStorage {

    private static final int TILE = 512;
    private static final int TERMS = BedRelaxation.RATE.length;

    /** Tiles worth a thread of their own. */
    private static final int GRAIN = 8;

    private final BedRelaxation relaxation;
    private final WorkerTeam team;
    private final int cells;
    private double[][] released;
    /** Flow into the bed at a stage that does not depend on the stage's head (m³/d). */
    private final double[] known;

    private final float[] change;
    private final float[] sum;
    private float[][][] memory = new float[3][TERMS][];

    /** Nothing remembered yet: the bed has adjusted. */
    SealingBedStorage(BedRelaxation relaxation, WorkerTeam team) {
        this.relaxation = relaxation;
        this.team = team;
        cells = relaxation.cells();
        released = new double[3][cells];
        known = new double[cells];
        change = new float[cells];
        sum = new float[cells];
        for (float[][] stage : memory) {
            for (int term = 0; term < TERMS; term++) {
                stage[term] = new float[cells];
            }
        }
    }

    /** Flow released by the bed over each cell at a stage (m³/d); not to be changed. */
    double[] released(int stage) {
        return released[stage - 1];
    }

    /**
     * Prepares an implicit stage. With {@code known} the part of a memory that the earlier stages decide, the memory at
     * the stage is {@code (known + h - base) / (1 + c l)}; what does not depend on h nor on base goes to the right-hand side.
     *
     * @param stage 2 or 3
     * @param baseWeight weight of the rates of the earlier stages (d)
     * @param coefficient weight of the stage's own rate, c (d)
     * @param rates rates of head of the earlier stages (m/d)
     * @param right right-hand side of the stage, changed (m³/d)
     */
    void prepareStage(int stage, double baseWeight, double coefficient, double[][] rates, double[] right) {
        forTiles((from, to) -> {
            for (int cell = from; cell < to; cell++) {
                double rate = stage == 2 ? rates[0][cell] : rates[0][cell] + rates[1][cell];
                change[cell] = (float) (baseWeight * rate);
            }
            Arrays.fill(sum, from, to, 0);
            for (int term = 0; term < TERMS; term++) {
                float decay = (float) (baseWeight * BedRelaxation.RATE[term]);
                float reach = (float) (coefficient * BedRelaxation.RATE[term]);
                float weight = (float) BedRelaxation.WEIGHT[term];
                if (stage == 2) {
                    knownOfSecond(memory[0][term], memory[1][term], decay, from, to);
                } else {
                    knownOfThird(memory[0][term], memory[1][term], memory[2][term], decay, from, to);
                }
                addShare(memory[stage - 1][term], weight, reach, from, to);
            }
            double[] conductance = relaxation.conductance();
            for (int cell = from; cell < to; cell++) {
                known[cell] = conductance[cell] * sum[cell];
                right[cell] -= known[cell];
            }
        });
    }

    /** Known part of a memory at stage 2, kept where the stage's memory will be. */
    private void knownOfSecond(float[] first, float[] second, float decay, int from, int to) {
        float[] rate = relaxation.diffusionRate();
        for (int cell = from; cell < to; cell++) {
            second[cell] = first[cell] + change[cell] - decay * rate[cell] * first[cell];
        }
    }

    /** Known part of a memory at stage 3, likewise. */
    private void knownOfThird(float[] first, float[] second, float[] third, float decay, int from, int to) {
        float[] rate = relaxation.diffusionRate();
        for (int cell = from; cell < to; cell++) {
            third[cell] = first[cell] + change[cell] - decay * rate[cell] * (first[cell] + second[cell]);
        }
    }

    /** Share of the known part of a memory in the flow. */
    private void addShare(float[] values, float weight, float reach, int from, int to) {
        float[] rate = relaxation.diffusionRate();
        for (int cell = from; cell < to; cell++) {
            sum[cell] += weight * values[cell] / (1 + reach * rate[cell]);
        }
    }

    /**
     * Completes an implicit stage once its head is known.
     *
     * @param stage 2 or 3
     * @param coefficient weight of the stage's own rate (d)
     * @param storage what each cell releases at once per metre of fall (m²)
     * @param perMetre what storage and bed release within the stage per time and metre of fall (m²/d)
     * @param base known part of the head (m)
     * @param head the head (m)
     */
    void completeStage(
            int stage, double coefficient, double[] storage, double[] perMetre, double[] base, double[] head) {
        double[] flow = released[stage - 1];
        double perDay = 1 / coefficient;
        forTiles((from, to) -> {
            for (int cell = from; cell < to; cell++) {
                change[cell] = (float) (head[cell] - base[cell]);
            }
            for (int term = 0; term < TERMS; term++) {
                complete(memory[stage - 1][term], (float) (coefficient * BedRelaxation.RATE[term]), from, to);
            }
            for (int cell = from; cell < to; cell++) {
                double ofBed = perMetre[cell] - perDay * storage[cell];
                flow[cell] = -known[cell] - ofBed * (head[cell] - base[cell]);
            }
        });
    }

    private void complete(float[] values, float reach, int from, int to) {
        float[] rate = relaxation.diffusionRate();
        for (int cell = from; cell < to; cell++) {
            values[cell] = (values[cell] + change[cell]) / (1 + reach * rate[cell]);
        }
    }

    /** The step stands: its last stage becomes the start of the next. */
    void accept() {
        memory = new float[][][] {memory[2], memory[1], memory[0]};
        released = new double[][] {released[2], released[1], released[0]};
    }

    private void forTiles(WorkerTeam.RangeTask work) {
        int tiles = (cells + TILE - 1) / TILE;
        team.split(tiles, GRAIN, (first, end) -> {
            for (int tile = first; tile < end; tile++) {
                work.run(tile * TILE, Math.min(cells, (tile + 1) * TILE));
            }
        });
    }
}
