package org.headfall.solver.linear;

/**
 * Coarsening that keeps every second row: operator-dependent interpolation to the rows left out, and the Galerkin product.
 *
 * <p>A row left out takes {@code south[k]} times the value of the row below plus {@code north[k]} times that of the row
 * above, with weights from one solve along the row for each neighbour (Schaffer 1998, "A semicoarsening multigrid
 * algorithm for SPDE": the exact interpolation {@code T^-1 C} lumped to a diagonal, {@code w = T^-1 C 1}).
 */
final class LineCoarsening {
    private final NinePointOperator fine;
    private final NinePointOperator coarse;
    private final LineFactors factors;
    private final double[] south;
    private final double[] north;
    final WorkerTeam.RangeTask interpolationTask = this::interpolateRows;
    final WorkerTeam.RangeTask productTask = this::multiplyRows;

    /**
     * Prepares the coarsening of an operator.
     *
     * @param fine operator with at least two rows
     * @param coarse receives the Galerkin product, half of the rows rounded up
     * @param factors factors of the rows of the fine operator
     */
    LineCoarsening(NinePointOperator fine, NinePointOperator coarse, LineFactors factors) {
        this.fine = fine;
        this.coarse = coarse;
        this.factors = factors;
        this.south = new double[fine.diagonal.length];
        this.north = new double[fine.diagonal.length];
    }

    /** Number of rows left out, the range of {@link #interpolationTask}. */
    int rowsLeftOut() {
        return fine.rows / 2;
    }

    private void interpolateRows(int from, int to) {
        for (int i = from; i < to; i++) {
            int row = 2 * i + 1;
            int first = fine.index(0, row);
            int stride = fine.columns;
            for (int k = first; k < first + stride; k++) {
                int below = k - stride;
                south[k] = fine.north[below] + fine.northEast[below - 1] + fine.northWest[below + 1];
                north[k] = fine.north[k] + fine.northEast[k] + fine.northWest[k];
            }
            factors.solveRow(row, south);
            factors.solveRow(row, north);
        }
    }

    private void multiplyRows(int from, int to) {
        for (int row = from; row < to; row++) {
            copyRow(row);
            if (row > 0) {
                addFromBelow(row);
            }
            if (2 * row + 1 < fine.rows) {
                addFromAbove(row);
                coupleRows(row);
            }
        }
    }

    private void copyRow(int row) {
        System.arraycopy(fine.diagonal, fine.index(0, 2 * row), coarse.diagonal, coarse.index(0, row), fine.columns);
        System.arraycopy(fine.east, fine.index(0, 2 * row), coarse.east, coarse.index(0, row), fine.columns);
    }

    /** Part of the coarse row's own couplings that runs through the row left out above it. */
    private void addFromAbove(int row) {
        int c = coarse.index(0, row);
        int kept = fine.index(0, 2 * row);
        int out = fine.index(0, 2 * row + 1);
        double[] w = south;
        for (int i = 0; i < fine.columns; i++, c++, kept++, out++) {
            coarse.diagonal[c] += w[out] * (fine.diagonal[out] * w[out] - 2 * fine.north[kept]);
            if (i + 1 < fine.columns) {
                coarse.east[c] += w[out] * (fine.east[out] * w[out + 1] + fine.northWest[kept + 1])
                        + fine.northEast[kept] * w[out + 1];
            }
        }
    }

    /** Part of the coarse row's own couplings that runs through the row left out below it. */
    private void addFromBelow(int row) {
        int c = coarse.index(0, row);
        int out = fine.index(0, 2 * row - 1);
        double[] w = north;
        for (int i = 0; i < fine.columns; i++, c++, out++) {
            coarse.diagonal[c] += w[out] * (fine.diagonal[out] * w[out] - 2 * fine.north[out]);
            if (i + 1 < fine.columns) {
                coarse.east[c] += w[out] * (fine.east[out] * w[out + 1] + fine.northEast[out])
                        + fine.northWest[out + 1] * w[out + 1];
            }
        }
    }

    /** Couplings of a coarse row with the next one, through the row left out between them. */
    private void coupleRows(int row) {
        if (2 * row + 2 >= fine.rows) {
            return;
        }
        int c = coarse.index(0, row);
        int kept = fine.index(0, 2 * row);
        int out = fine.index(0, 2 * row + 1);
        for (int i = 0; i < fine.columns; i++, c++, kept++, out++) {
            double w = south[out];
            coarse.north[c] = (fine.north[kept] - w * fine.diagonal[out]) * north[out] + w * fine.north[out];
            if (i + 1 < fine.columns) {
                coarse.northEast[c] =
                        (w * fine.east[out] + fine.northEast[kept]) * north[out + 1] + w * fine.northEast[out];
            }
            if (i > 0) {
                coarse.northWest[c] =
                        (w * fine.east[out - 1] + fine.northWest[kept]) * north[out - 1] + w * fine.northWest[out];
            }
        }
    }
}
