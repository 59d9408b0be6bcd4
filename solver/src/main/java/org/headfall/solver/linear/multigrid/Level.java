package org.headfall.solver.linear.multigrid;

/**
 * One level: a symmetric nine-point matrix on {@code columns x rows} cells in which each column is coupled to its two
 * neighbours, and the factors of its columns. Entries are those of the matrix (negative beside the diagonal as a rule).
 * Names of the couplings say where the neighbour lies: {@code northEast} couples (column, row) to
 * (column + 1, row + 1). Arrays are row by row.
 */
final class Level {

    final int columns;
    final int rows;
    final double[] diagonal;
    final double[] north;
    final double[] east;
    final double[] northEast;
    final double[] southEast;
    final double[] restricted;
    final double[] residual;
    final double[] solution;
    private final boolean fivePoint;
    private final double[] inversePivot;
    private final double[] multiplier;

    Level(int columns, int rows, boolean fivePoint) {
        this.columns = columns;
        this.rows = rows;
        this.fivePoint = fivePoint;
        int cells = columns * rows;
        diagonal = new double[cells];
        north = new double[cells];
        east = new double[cells];
        northEast = fivePoint ? new double[0] : new double[cells];
        southEast = fivePoint ? new double[0] : new double[cells];
        restricted = fivePoint ? new double[0] : new double[cells];
        residual = new double[cells];
        solution = fivePoint ? new double[0] : new double[cells];
        inversePivot = new double[cells];
        multiplier = new double[cells];
    }

    /** Entry between (column, row) and (column + 1, row + 1). */
    double northEast(int cell) {
        return fivePoint ? 0 : northEast[cell];
    }

    /** Entry between (column, row) and (column + 1, row - 1). */
    double southEast(int cell) {
        return fivePoint ? 0 : southEast[cell];
    }

    /** Factors all columns: {@code pivot_r = d_r - n_{r-1}^2 / pivot_{r-1}}. */
    void factorColumns() {
        for (int column = 0; column < columns; column++) {
            inversePivot[column] = 1 / diagonal[column];
        }
        for (int cell = columns; cell < diagonal.length; cell++) {
            int below = cell - columns;
            multiplier[cell] = north[below] * inversePivot[below];
            inversePivot[cell] = 1 / (diagonal[cell] - north[below] * multiplier[cell]);
        }
    }

    /**
     * Solves every second column: in {@code x} its right-hand side, out the solution.
     *
     * @param first 0 for the even columns, 1 for the odd
     */
    void solveColumns(int first, double[] x) {
        for (int row = 1; row < rows; row++) {
            int start = row * columns;
            for (int cell = start + first; cell < start + columns; cell += 2) {
                x[cell] -= multiplier[cell] * x[cell - columns];
            }
        }
        int last = (rows - 1) * columns;
        for (int cell = last + first; cell < last + columns; cell += 2) {
            x[cell] *= inversePivot[cell];
        }
        for (int row = rows - 2; row >= 0; row--) {
            int start = row * columns;
            for (int cell = start + first; cell < start + columns; cell += 2) {
                x[cell] = inversePivot[cell] * (x[cell] - north[cell] * x[cell + columns]);
            }
        }
    }

    /**
     * For every second column: {@code result = right - (couplings to the neighbouring columns) x}. Other columns of the
     * result are left alone; {@code result} may be {@code x} itself.
     */
    void subtractNeighbours(int first, double[] right, double[] x, double[] result) {
        for (int row = 0; row < rows; row++) {
            for (int column = first; column < columns; column += 2) {
                int cell = row * columns + column;
                double sum = right[cell];
                if (column + 1 < columns) {
                    sum -= east[cell] * x[cell + 1];
                }
                if (column > 0) {
                    sum -= east[cell - 1] * x[cell - 1];
                }
                result[cell] = sum;
            }
        }
        if (!fivePoint) {
            subtractDiagonalNeighbours(first, x, result);
        }
    }

    private void subtractDiagonalNeighbours(int first, double[] x, double[] result) {
        for (int row = 0; row < rows; row++) {
            for (int column = first; column < columns; column += 2) {
                int cell = row * columns + column;
                double sum = 0;
                if (row + 1 < rows) {
                    int above = cell + columns;
                    sum += column + 1 < columns ? northEast[cell] * x[above + 1] : 0;
                    sum += column > 0 ? southEast[above - 1] * x[above - 1] : 0;
                }
                if (row > 0) {
                    int below = cell - columns;
                    sum += column + 1 < columns ? southEast[cell] * x[below + 1] : 0;
                    sum += column > 0 ? northEast[below - 1] * x[below - 1] : 0;
                }
                result[cell] -= sum;
            }
        }
    }

    /** For the even columns: subtracts what the column itself makes of {@code x}. */
    void subtractOwnColumn(double[] x, double[] result) {
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column += 2) {
                int cell = row * columns + column;
                double sum = diagonal[cell] * x[cell];
                if (row > 0) {
                    sum += north[cell - columns] * x[cell - columns];
                }
                if (row + 1 < rows) {
                    sum += north[cell] * x[cell + columns];
                }
                result[cell] -= sum;
            }
        }
    }
}
