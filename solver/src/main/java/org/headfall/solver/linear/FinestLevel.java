package org.headfall.solver.linear;

/**
 * What {@link PointMultigrid} keeps of the finest grid, in single precision: the five-point couplings and the weights of
 * interpolation, row by row, even and odd columns apart so that neighbours across a row stand at the same index.
 *
 * <p>Half a row of even columns has {@link #halfColumns} values; that of odd columns as many, with a last one of zero
 * coupling where the number of columns is odd. Weights stand at odd rows only, since red-black smoothing leaves no use
 * for the others: cells of the colour relaxed last have no residual, and need no interpolation.
 */
final class FinestLevel {
    final int columns;
    final int rows;
    final int halfColumns;
    /** Inverse of the diagonal of even columns; zero beyond the rim. */
    final float[][] inverseEven;
    /** Inverse of the diagonal of odd columns; zero beyond the rim. */
    final float[][] inverseOdd;
    /** Coupling of column 2 i with 2 i + 1. */
    final float[][] eastEven;
    /** Coupling of column 2 i + 1 with 2 i + 2. */
    final float[][] eastOdd;

    /** Weight of column 2 i in column 2 i + 1; in odd rows. */
    final float[][] columnBefore;
    /** Weight of column 2 i + 2 in column 2 i + 1; in odd rows. */
    final float[][] columnAfter;
    /** Weight of the row below in an odd row, at even columns. */
    final float[][] rowBefore;
    /** Weight of the row above in an odd row, at even columns. */
    final float[][] rowAfter;

    private final float[][] northEven;
    private final float[][] northOdd;
    private final float[] none;

    /** Makes a level without values. */
    FinestLevel(int columns, int rows) {
        this.columns = columns;
        this.rows = rows;
        this.halfColumns = (columns + 1) / 2;
        this.inverseEven = new float[rows][halfColumns];
        this.inverseOdd = new float[rows][halfColumns];
        this.eastEven = new float[rows][halfColumns];
        this.eastOdd = new float[rows][halfColumns];
        this.northEven = new float[rows][halfColumns];
        this.northOdd = new float[rows][halfColumns];
        this.columnBefore = new float[rows / 2][halfColumns];
        this.columnAfter = new float[rows / 2][halfColumns];
        this.rowBefore = new float[rows / 2][halfColumns];
        this.rowAfter = new float[rows / 2][halfColumns];
        this.none = new float[halfColumns];
    }

    /** Returns the couplings of a row's cells of one parity with the row above; zero for row -1. */
    float[] north(int row, int parity) {
        if (row < 0) {
            return none;
        }
        return parity == 0 ? northEven[row] : northOdd[row];
    }

    /** Takes over the values of a row. */
    void copyRow(FivePointMatrix matrix, int row) {
        int first = row * columns;
        for (int i = 0; i < halfColumns; i++) {
            int k = first + 2 * i;
            inverseEven[row][i] = (float) (1 / matrix.diagonal()[k]);
            eastEven[row][i] = (float) matrix.east()[k];
            northEven[row][i] = (float) matrix.north()[k];
        }
        for (int i = 0; i < columns / 2; i++) {
            int k = first + 2 * i + 1;
            inverseOdd[row][i] = (float) (1 / matrix.diagonal()[k]);
            eastOdd[row][i] = (float) matrix.east()[k];
            northOdd[row][i] = (float) matrix.north()[k];
        }
    }
}
