package org.headfall.solver.linear.multigrid;

import java.util.Arrays;

/**
 * Builds a coarser level from a finer one: odd columns are left out. A column left out follows its two neighbours with
 * one weight a cell, found by solving the column for neighbours of constant value (so that a strong coupling along the
 * column is seen); the coarse matrix is the Galerkin product with that interpolation. Both columns' blocks are
 * tridiagonal, and so are all products with weights on the diagonal.
 */
final class Coarsening {

    private final Level fine;
    private final Level coarse;
    private final double[] westWeight;
    private final double[] eastWeight;

    Coarsening(Level fine, Level coarse) {
        this.fine = fine;
        this.coarse = coarse;
        westWeight = new double[fine.diagonal.length];
        eastWeight = new double[fine.diagonal.length];
    }

    /** Computes weights and coarse matrix from the values of the fine level, whose columns have been factored. */
    void compute() {
        computeWeights();
        for (int row = 0; row < fine.rows; row++) {
            for (int column = 0; column < coarse.columns; column++) {
                ownColumn(column, row);
                nextColumn(column, row);
            }
        }
    }

    private void computeWeights() {
        Arrays.fill(westWeight, 0);
        Arrays.fill(eastWeight, 0);
        for (int row = 0; row < fine.rows; row++) {
            for (int column = 1; column < fine.columns; column += 2) {
                int cell = row * fine.columns + column;
                westWeight[cell] = -block(column - 1, row + 1, row)
                        - block(column - 1, row, row)
                        - block(column - 1, row - 1, row);
                eastWeight[cell] = -block(column, row, row - 1) - block(column, row, row) - block(column, row, row + 1);
            }
        }
        fine.solveColumns(1, westWeight);
        fine.solveColumns(1, eastWeight);
    }

    /** Entry of the block between a column and the next one: from row {@code from} to row {@code to} of the next. */
    private double block(int column, int from, int to) {
        if (column < 0 || column + 1 >= fine.columns || from < 0 || to < 0 || from >= fine.rows || to >= fine.rows) {
            return 0;
        }
        int cell = from * fine.columns + column;
        if (to == from) {
            return fine.east[cell];
        }
        return to > from ? fine.northEast(cell) : fine.southEast(cell);
    }

    /** Entries of the coarse column on itself: diagonal and north. */
    private void ownColumn(int coarseColumn, int row) {
        int column = 2 * coarseColumn;
        int cell = row * fine.columns + column;
        boolean hasNorth = row + 1 < fine.rows;
        double diagonal = fine.diagonal[cell];
        double north = hasNorth ? fine.north[cell] : 0;
        if (column + 1 < fine.columns) {
            int side = cell + 1;
            double w = westWeight[side];
            diagonal += w * (2 * block(column, row, row) + w * fine.diagonal[side]);
            if (hasNorth) {
                double above = westWeight[side + fine.columns];
                north += block(column, row, row + 1) * above
                        + w * block(column, row + 1, row)
                        + w * fine.north[side] * above;
            }
        }
        if (column > 0) {
            int side = cell - 1;
            double w = eastWeight[side];
            diagonal += w * (2 * block(column - 1, row, row) + w * fine.diagonal[side]);
            if (hasNorth) {
                double above = eastWeight[side + fine.columns];
                north += block(column - 1, row + 1, row) * above
                        + w * block(column - 1, row, row + 1)
                        + w * fine.north[side] * above;
            }
        }
        int target = row * coarse.columns + coarseColumn;
        coarse.diagonal[target] = diagonal;
        coarse.north[target] = north;
    }

    /** Entries between a coarse column and the next, by way of the odd column between them. */
    private void nextColumn(int coarseColumn, int row) {
        int column = 2 * coarseColumn;
        int target = row * coarse.columns + coarseColumn;
        if (column + 2 >= fine.columns) {
            coarse.east[target] = 0;
            coarse.northEast[target] = 0;
            coarse.southEast[target] = 0;
            return;
        }
        coarse.east[target] = through(column, row, row);
        coarse.northEast[target] = row + 1 < fine.rows ? through(column, row, row + 1) : 0;
        coarse.southEast[target] = row > 0 ? through(column, row, row - 1) : 0;
    }

    /** {@code A_io E + W A_o,i+2 + W A_oo E} with the odd column o, W and E its weights. */
    private double through(int column, int from, int to) {
        int odd = column + 1;
        double west = westWeight[from * fine.columns + odd];
        double east = eastWeight[to * fine.columns + odd];
        double own;
        if (from == to) {
            own = fine.diagonal[from * fine.columns + odd];
        } else {
            own = fine.north[Math.min(from, to) * fine.columns + odd];
        }
        return block(column, from, to) * east + west * block(odd, from, to) + west * own * east;
    }
}
