package org.headfall.solver.flow;

import org.headfall.solver.linear.WorkerTeam;

/**
 * Loops over all cells, shared among threads. Sums run along blocks of fixed length and then over the blocks in order, so
 * they are the same bit for bit for any number of threads.
 */
final class CellLoops {

    private static final int BLOCK = 2048;

    /** Cells worth a thread of their own. */
    private static final int GRAIN = 2 * BLOCK;

    private final WorkerTeam team;
    private final int cells;
    private final double[] sums;
    private final double[] grossSums;

    /** Part of a sum. */
    @FunctionalInterface
    interface PartialSum {
        /** Sum over {@code from <= cell < to}. */
        double over(int from, int to);
    }

    CellLoops(WorkerTeam team, int cells) {
        this.team = team;
        this.cells = cells;
        sums = new double[(cells + BLOCK - 1) / BLOCK];
        grossSums = new double[sums.length];
    }

    /** Runs a loop whose cells do not depend on each other. */
    void run(WorkerTeam.RangeTask loop) {
        team.split(cells, GRAIN, loop);
    }

    /** Adds up over all cells. */
    double sum(PartialSum part) {
        overBlocks(block -> sums[block] = part.over(block * BLOCK, end(block)));
        return total(sums);
    }

    /** Largest absolute value of a field; not a number if one of its values is none. */
    double largest(double[] field) {
        overBlocks(block -> {
            double largest = 0;
            for (int cell = block * BLOCK; cell < end(block); cell++) {
                largest = Math.max(largest, Math.abs(field[cell]));
            }
            sums[block] = largest;
        });
        double largest = 0;
        for (double value : sums) {
            largest = Math.max(largest, value);
        }
        return largest;
    }

    /**
     * Adds the flows of all cells to a term of the water balance, inflow and outflow apart. They are half the sum and half
     * the difference of what flows in all and what is left of it, which saves asking each cell for its sign.
     *
     * @param flows flow of each cell (m³/d), inflow positive
     * @param rates receives them
     * @param term the term
     */
    void addFlows(double[] flows, FlowRates rates, int term) {
        overBlocks(block -> addBlock(block, flows));
        double net = total(sums);
        double gross = total(grossSums);
        rates.add(term, 0.5 * (gross + net));
        rates.add(term, 0.5 * (net - gross));
    }

    /** Two sums each, which do not wait for each other. */
    private void addBlock(int block, double[] flows) {
        int end = end(block);
        double net = 0;
        double otherNet = 0;
        double gross = 0;
        double otherGross = 0;
        int cell = block * BLOCK;
        for (; cell < end - 1; cell += 2) {
            net += flows[cell];
            gross += Math.abs(flows[cell]);
            otherNet += flows[cell + 1];
            otherGross += Math.abs(flows[cell + 1]);
        }
        if (cell < end) {
            net += flows[cell];
            gross += Math.abs(flows[cell]);
        }
        sums[block] = net + otherNet;
        grossSums[block] = gross + otherGross;
    }

    private interface BlockTask {
        void run(int block);
    }

    private void overBlocks(BlockTask task) {
        team.split(sums.length, GRAIN / BLOCK, (first, end) -> {
            for (int block = first; block < end; block++) {
                task.run(block);
            }
        });
    }

    private int end(int block) {
        return Math.min(cells, (block + 1) * BLOCK);
    }

    private static double total(double[] parts) {
        double total = 0;
        for (double part : parts) {
            total += part;
        }
        return total;
    }
}
