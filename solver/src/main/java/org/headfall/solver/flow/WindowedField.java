package org.headfall.solver.flow;

import java.nio.FloatBuffer;

/**
 * A field that matters around its source only, kept in single precision over the smallest rectangle of cells outside of
 * which it is too small to count.
 *
 * @param window the rectangle
 * @param values values of its cells, row after row
 */
record WindowedField(CellWindow window, FloatBuffer values) {

    /** Share of the largest value below which a value does not count: less than single precision can tell beside it. */
    private static final double NEGLIGIBLE = 1e-8;

    /**
     * The part of a field that counts.
     *
     * @param within rectangle outside of which it is zero
     * @param field value of each cell of the grid
     * @param memory where it is kept
     */
    static WindowedField of(CellWindow within, double[] field, SolutionMemory memory) {
        double largest = 0;
        for (int row = within.firstRow(); row < within.endRow(); row++) {
            int offset = row * within.gridColumns();
            for (int k = offset + within.firstColumn(); k < offset + within.endColumn(); k++) {
                largest = Math.max(largest, Math.abs(field[k]));
            }
        }
        CellWindow window = within.exceeding(NEGLIGIBLE * largest, field);
        float[] values = new float[window.cells()];
        int to = 0;
        for (int row = window.firstRow(); row < window.endRow(); row++) {
            int offset = row * window.gridColumns();
            for (int k = offset + window.firstColumn(); k < offset + window.endColumn(); k++) {
                values[to++] = (float) field[k];
            }
        }
        return new WindowedField(window, memory.keep(values));
    }

    /** Whether a row of the grid passes through the rectangle. */
    boolean reaches(int row) {
        return row >= window.firstRow() && row < window.endRow() && window.columns() > 0;
    }

    /** Copies the values of a row of the grid that passes through the rectangle to their columns. */
    void copyRow(int row, float[] target) {
        int width = window.columns();
        values.get((row - window.firstRow()) * width, target, window.firstColumn(), width);
    }

    /** Value of a cell; zero outside the rectangle. */
    double at(int row, int column) {
        boolean inside = reaches(row) && column >= window.firstColumn() && column < window.endColumn();
        return inside ? values.get((row - window.firstRow()) * window.columns() + column - window.firstColumn()) : 0;
    }
}
