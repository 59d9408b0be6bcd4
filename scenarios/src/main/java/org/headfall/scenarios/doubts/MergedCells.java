package org.headfall.scenarios.doubts;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;

/**
 * The cells of a grid merged two by two along both axes; an odd last column or row stays as it is. A merged cell belongs
 * to the aquifer if one of its parts does, so that no piece of the aquifer loses its connection or its boundary.
 */
final class MergedCells {

    private final RectilinearGrid fine;
    private final boolean[] fineActive;
    private final RectilinearGrid grid;
    private final boolean[] active;
    private final double[] activeArea;

    MergedCells(RectilinearGrid fine, boolean[] fineActive) {
        this.fine = fine;
        this.fineActive = fineActive;
        grid = new RectilinearGrid(everySecondEdge(fine.x()), everySecondEdge(fine.y()));
        active = new boolean[grid.cellCount()];
        activeArea = new double[grid.cellCount()];
        for (int cell = 0; cell < fineActive.length; cell++) {
            if (fineActive[cell]) {
                active[merged(cell)] = true;
                activeArea[merged(cell)] += fine.area(cell);
            }
        }
    }

    private static Axis everySecondEdge(Axis axis) {
        double[] edges = new double[(axis.cells() + 1) / 2 + 1];
        for (int i = 0; i < edges.length; i++) {
            edges[i] = axis.edge(Math.min(2 * i, axis.cells()));
        }
        return Axis.ofEdges(edges);
    }

    private int merged(int cell) {
        return grid.cell(fine.column(cell) / 2, fine.row(cell) / 2);
    }

    /** For each cell of the finer grid, the merged cell that holds it. */
    int[] parents() {
        int[] parents = new int[fineActive.length];
        Arrays.setAll(parents, this::merged);
        return parents;
    }

    /** The grid of merged cells. */
    RectilinearGrid grid() {
        return grid;
    }

    /** Whether a merged cell belongs to the aquifer. */
    boolean[] active() {
        return active;
    }

    /** Mean over the parts that belong to the aquifer, weighted by area; over all parts where none does. */
    double[] mean(double[] values) {
        return mean(values, value -> value, value -> value);
    }

    /** Geometric mean over the same parts. */
    double[] geometricMean(double[] values) {
        return mean(values, Math::log, Math::exp);
    }

    private double[] mean(double[] values, DoubleUnaryOperator in, DoubleUnaryOperator out) {
        double[] sum = new double[grid.cellCount()];
        for (int cell = 0; cell < values.length; cell++) {
            int merged = merged(cell);
            if (fineActive[cell] || !active[merged]) {
                sum[merged] += fine.area(cell) * in.applyAsDouble(values[cell]);
            }
        }
        for (int cell = 0; cell < sum.length; cell++) {
            sum[cell] = out.applyAsDouble(sum[cell] / (active[cell] ? activeArea[cell] : grid.area(cell)));
        }
        return sum;
    }

    /**
     * A quantity per area, spread from the parts that belong to the aquifer over the whole merged cell, so that its sum
     * over the aquifer stays; the mean over all parts where none belongs to it.
     */
    double[] conserved(double[] values) {
        double[] conserved = mean(values);
        for (int cell = 0; cell < conserved.length; cell++) {
            conserved[cell] *= active[cell] ? activeArea[cell] / grid.area(cell) : 1;
        }
        return conserved;
    }
}
