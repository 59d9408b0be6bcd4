package org.headfall.solver.flow;

import java.util.Arrays;
import org.headfall.solver.linear.WorkerTeam;

/**
 * What the relaxation terms of the sealing bed remember in one run, through the stages of its time steps. Cells are
 * worked through in tiles small enough that all terms of a tile find its heads in the fastest cache, copied to where
 * all arrays of a loop have the same index: only then does the compiler vectorise it.
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

    private float[][][] memory = new float[3][TERMS][];

    /** Nothing remembered yet: the bed has adjusted. */
    SealingBedStorage(BedRelaxation relaxation, WorkerTeam team) {
        this.relaxation = relaxation;
        this.team = team;
        cells = relaxation.cells();
        released = new double[3][cells];
        known = new double[cells];
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
        team.split(tiles(), GRAIN, (first, end) -> {
            Tile tile = new Tile();
            for (int t = first; t < end; t++) {
                tile.moveTo(t);
                tile.prepare(stage, (float) baseWeight, (float) coefficient, rates, right);
            }
        });
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
        team.split(tiles(), GRAIN, (first, end) -> {
            Tile tile = new Tile();
            for (int t = first; t < end; t++) {
                tile.moveTo(t);
                tile.complete(stage, (float) coefficient, base, head);
                tile.findReleased(stage, coefficient, storage, perMetre, base, head);
            }
        });
    }

    /** The step stands: its last stage becomes the start of the next. */
    void accept() {
        memory = new float[][][] {memory[2], memory[1], memory[0]};
        released = new double[][] {released[2], released[1], released[0]};
    }

    private int tiles() {
        return (cells + TILE - 1) / TILE;
    }

    /** Copies of one tile's numbers, where all arrays of a loop have the same index. One thread's alone. */
    private final class Tile {

        private final float[] change = new float[TILE];
        private final float[] sum = new float[TILE];
        private final float[] diffusion = new float[TILE];
        private final float[] start = new float[TILE];
        private final float[] decaying = new float[TILE];
        private final float[] values = new float[TILE];
        private int from;
        private int length;

        void moveTo(int tile) {
            from = tile * TILE;
            length = Math.min(TILE, cells - from);
            System.arraycopy(relaxation.diffusionRate(), from, diffusion, 0, length);
        }

        void prepare(int stage, float baseWeight, float coefficient, double[][] rates, double[] right) {
            for (int i = 0; i < length; i++) {
                double rate = stage == 2 ? rates[0][from + i] : rates[0][from + i] + rates[1][from + i];
                change[i] = (float) (baseWeight * rate);
            }
            Arrays.fill(sum, 0);
            for (int term = 0; term < TERMS; term++) {
                addKnown(stage, term, baseWeight, coefficient);
            }
            double[] conductance = relaxation.conductance();
            for (int i = 0; i < length; i++) {
                known[from + i] = conductance[from + i] * sum[i];
                right[from + i] -= known[from + i];
            }
        }

        /** Known part of a memory, kept where the stage's memory will be, and its share in the flow. */
        private void addKnown(int stage, int term, float baseWeight, float coefficient) {
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

        void complete(int stage, float coefficient, double[] base, double[] head) {
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

        void findReleased(
                int stage, double coefficient, double[] storage, double[] perMetre, double[] base, double[] head) {
            double[] flow = released[stage - 1];
            double perDay = 1 / coefficient;
            for (int cell = from; cell < from + length; cell++) {
                double ofBed = perMetre[cell] - perDay * storage[cell];
                flow[cell] = -known[cell] - ofBed * (head[cell] - base[cell]);
            }
        }
    }
}
