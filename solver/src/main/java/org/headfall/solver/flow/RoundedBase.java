package org.headfall.solver.flow;

import java.util.stream.IntStream;
import org.headfall.solver.time.Step;

/**
 * Gives back the water that rounding takes from the known part of a stage. In steps of seconds the heads of most cells change
 * by less than their last place: added to a head such a change is lost, in a million cells alike, and the water that they
 * released would be missing in the balance of the step. What is lost is known exactly, since heads before and after differ by
 * little (Sterbenz 1974), and goes to {@link LeftoverCells}.
 */
final class RoundedBase {

    /** Share of the throughput below which nothing is given back: a tenth of the bar of the balance. */
    private static final double SHARE_THAT_MATTERS = 1e-10;

    private static final int CELLS_LOOKED_AT = 64;

    private final double[] storage;
    private final CellLoops loops;
    private final double whole;
    private final LeftoverCells takers;

    /** Some of the cells that store, spread over all: one alone may stand near the datum, where places are fine. */
    private final int[] looked;

    /**
     * What rounding takes from an aquifer.
     *
     * @param storage water released by each cell at once per metre of fall (m²)
     * @param loops runs the loops over all cells
     */
    RoundedBase(double[] storage, CellLoops loops) {
        this.storage = storage;
        this.loops = loops;
        int[] storing = IntStream.range(0, storage.length)
                .filter(cell -> storage[cell] > 0)
                .toArray();
        double sum = 0;
        for (int cell : storing) {
            sum += storage[cell];
        }
        whole = sum;
        takers = LeftoverCells.of(storage.length, cell -> storage[cell]);
        looked = IntStream.range(0, Math.min(CELLS_LOOKED_AT, storing.length))
                .map(i -> storing[(int) ((long) i * storing.length / Math.min(CELLS_LOOKED_AT, storing.length))])
                .toArray();
    }

    /**
     * Whether rounding could take more of a step than the water balance may miss.
     *
     * @param head heads (m)
     * @param throughput water that passes in the step (m³)
     */
    boolean matters(double[] head, double throughput) {
        double farthest = 0;
        for (int cell : looked) {
            farthest = Math.max(farthest, Math.abs(head[cell]));
        }
        return whole * Math.ulp(farthest) > SHARE_THAT_MATTERS * throughput;
    }

    /**
     * Gives back what has been lost.
     *
     * @param stage 2 or 3
     * @param step the step
     * @param before heads at its start (m)
     * @param rates rates of head of the earlier stages (m/d)
     * @param base known part of the heads (m), changed
     */
    void restore(int stage, Step step, double[] before, double[][] rates, double[] base) {
        double firstWeight = step.baseWeight(stage);
        double secondWeight = stage == 2 ? 0 : firstWeight;
        double lost = loops.sum((from, to) -> {
            double sum = 0;
            for (int cell = from; cell < to; cell++) {
                double change = firstWeight * rates[0][cell] + secondWeight * rates[1][cell];
                sum += storage[cell] * (change - (base[cell] - before[cell]));
            }
            return sum;
        });
        takers.take(lost, cell -> storage[cell], base);
    }
}
