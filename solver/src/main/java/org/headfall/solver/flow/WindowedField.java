package org.headfall.solver.flow;

import org.headfall.solver.grid.RectilinearGrid;

/**
 * A field that matters around its source only, kept in single precision over the smallest rectangle of cells outside of
 * which it is too small to count.
 *
 * @param firstRow first row of the rectangle
 * @param endRow row after its last
 * @param firstColumn first column
 * @param endColumn column after its last
 * @param values values of its cells, row after row
 */
@SuppressWarnings("ArrayRecordComponent") // read in one loop, never compared
record WindowedField(int firstRow, int endRow, int firstColumn, int endColumn, float[] values) {

    /** Share of the largest value below which a value does not count: less than single precision can tell beside it. */
    private static final double NEGLIGIBLE = 1e-8;

    /** The part of a field that counts. */
    static WindowedField of(RectilinearGrid grid, double[] field) {
        double largest = 0;
        for (double value : field) {
            largest = Math.max(largest, Math.abs(value));
        }
        double least = NEGLIGIBLE * largest;
        int columns = grid.columns();
        int firstRow = grid.rows();
        int endRow = 0;
        int firstColumn = columns;
        int endColumn = 0;
        for (int row = 0; row < grid.rows(); row++) {
            int from = row * columns;
            int first = 0;
            while (first < columns && Math.abs(field[from + first]) <= least) {
                first++;
            }
            if (first == columns) {
                continue;
            }
            int end = columns;
            while (Math.abs(field[from + end - 1]) <= least) {
                end--;
            }
            firstRow = Math.min(firstRow, row);
            endRow = row + 1;
            firstColumn = Math.min(firstColumn, first);
            endColumn = Math.max(endColumn, end);
        }
        return cut(field, columns, firstRow, Math.max(firstRow, endRow), firstColumn, endColumn);
    }

    private static WindowedField cut(
            double[] field, int columns, int firstRow, int endRow, int firstColumn, int endColumn) {
        int width = Math.max(0, endColumn - firstColumn);
        float[] values = new float[width * (endRow - firstRow)];
        for (int row = firstRow; row < endRow; row++) {
            int from = row * columns + firstColumn;
            int to = (row - firstRow) * width;
            for (int k = 0; k < width; k++) {
                values[to + k] = (float) field[from + k];
            }
        }
        return new WindowedField(firstRow, endRow, firstColumn, endColumn, values);
    }

    /** Memory it takes (bytes). */
    long bytes() {
        return (long) Float.BYTES * values.length;
    }

    /** Whether a row of the grid passes through the rectangle. */
    boolean reaches(int row) {
        return row >= firstRow && row < endRow && endColumn > firstColumn;
    }

    /** Copies the values of a row of the grid that passes through the rectangle to their columns. */
    void copyRow(int row, float[] target) {
        int width = endColumn - firstColumn;
        System.arraycopy(values, (row - firstRow) * width, target, firstColumn, width);
    }

    /** Value of a cell; zero outside the rectangle. */
    double at(int row, int column) {
        boolean inside = reaches(row) && column >= firstColumn && column < endColumn;
        return inside ? values[(row - firstRow) * (endColumn - firstColumn) + column - firstColumn] : 0;
    }
}
