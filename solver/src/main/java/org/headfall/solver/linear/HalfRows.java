package org.headfall.solver.linear;

/**
 * A vector over the cells in single precision, row by row, even and odd columns apart, so that neighbours across a row
 * stand at the same index and loops over them become vector instructions. Each half has one cell more than
 * {@link FinestLevel#halfColumns}, which is zero, as is the last odd one where the number of columns is odd.
 */
final class HalfRows {
    private final float[][] even;
    private final float[][] odd;
    private final float[] none;
    private final int columns;

    /** Makes a vector of zeros. */
    HalfRows(int columns, int rows) {
        this.columns = columns;
        int length = (columns + 1) / 2 + 1;
        even = new float[rows][];
        odd = new float[rows][];
        // Row after row, so that a walk over the rows goes straight through memory.
        for (int row = 0; row < rows; row++) {
            even[row] = new float[length];
            odd[row] = new float[length];
        }
        none = new float[length];
    }

    /** Returns the cells of even column of a row; zeros where there is no such row. */
    float[] even(int row) {
        return row >= 0 && row < even.length ? even[row] : none;
    }

    /** Returns the cells of odd column of a row; zeros where there is no such row. */
    float[] odd(int row) {
        return row >= 0 && row < odd.length ? odd[row] : none;
    }

    /** Returns the cells of a row whose column has the given parity; zeros where there is no such row. */
    float[] half(int row, int parity) {
        return parity == 0 ? even(row) : odd(row);
    }

    /** Takes over the cells of a row, given in their order. */
    void split(int row, float[] cells) {
        float[] evenCells = even[row];
        float[] oddCells = odd[row];
        for (int i = 0; i < columns / 2; i++) {
            evenCells[i] = cells[2 * i];
            oddCells[i] = cells[2 * i + 1];
        }
        if (columns % 2 == 1) {
            evenCells[columns / 2] = cells[columns - 1];
        }
    }

    /** Gives the cells of a row in their order; zeros where there is no such row. */
    void join(int row, float[] cells) {
        float[] evenCells = even(row);
        float[] oddCells = odd(row);
        for (int i = 0; i < columns / 2; i++) {
            cells[2 * i] = evenCells[i];
            cells[2 * i + 1] = oddCells[i];
        }
        if (columns % 2 == 1) {
            cells[columns - 1] = evenCells[columns / 2];
        }
    }
}
