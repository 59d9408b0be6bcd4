package org.headfall.solver.flow;

import java.util.stream.IntStream;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.nearfield.CellWeights;

/**
 * A rectangle of cells of a grid.
 *
 * @param gridColumns columns of the grid
 * @param gridRows rows of the grid
 * @param firstRow first row of the rectangle
 * @param endRow row after its last
 * @param firstColumn first column
 * @param endColumn column after its last
 */
record CellWindow(int gridColumns, int gridRows, int firstRow, int endRow, int firstColumn, int endColumn) {

    /** All cells. */
    static CellWindow whole(RectilinearGrid grid) {
        return new CellWindow(grid.columns(), grid.rows(), 0, grid.rows(), 0, grid.columns());
    }

    /** The smallest rectangle that holds some cells, at least one. */
    static CellWindow around(RectilinearGrid grid, int[] cells) {
        int columns = grid.columns();
        int[] column = IntStream.of(cells).map(cell -> cell % columns).sorted().toArray();
        int[] row = IntStream.of(cells).map(cell -> cell / columns).sorted().toArray();
        int last = cells.length - 1;
        return new CellWindow(columns, grid.rows(), row[0], row[last] + 1, column[0], column[last] + 1);
    }

    /** The smallest rectangle within this one outside of which no value of a field is larger than some value. */
    CellWindow exceeding(double least, double[] field) {
        int top = gridRows;
        int bottom = 0;
        int left = gridColumns;
        int right = 0;
        for (int row = firstRow; row < endRow; row++) {
            int offset = row * gridColumns;
            int first = firstColumn;
            while (first < endColumn && Math.abs(field[offset + first]) <= least) {
                first++;
            }
            if (first == endColumn) {
                continue;
            }
            int end = endColumn;
            while (Math.abs(field[offset + end - 1]) <= least) {
                end--;
            }
            top = Math.min(top, row);
            bottom = row + 1;
            left = Math.min(left, first);
            right = Math.max(right, end);
        }
        return new CellWindow(gridColumns, gridRows, top, Math.max(top, bottom), left, Math.max(left, right));
    }

    /** The rectangle with more cells on every side, as far as the grid goes. */
    CellWindow widened(int cells) {
        return new CellWindow(
                gridColumns,
                gridRows,
                Math.max(0, firstRow - cells),
                Math.min(gridRows, endRow + cells),
                Math.max(0, firstColumn - cells),
                Math.min(gridColumns, endColumn + cells));
    }

    /** The rectangle that this and another have in common; empty if there is none. */
    CellWindow and(CellWindow other) {
        int top = Math.max(firstRow, other.firstRow);
        int left = Math.max(firstColumn, other.firstColumn);
        return new CellWindow(
                gridColumns,
                gridRows,
                top,
                Math.max(top, Math.min(endRow, other.endRow)),
                left,
                Math.max(left, Math.min(endColumn, other.endColumn)));
    }

    int rows() {
        return endRow - firstRow;
    }

    int columns() {
        return endColumn - firstColumn;
    }

    /** Number of its cells. */
    int cells() {
        return rows() * columns();
    }

    /** Values of a field of the grid in its cells, row after row. */
    double[] cut(double[] field) {
        double[] part = new double[cells()];
        for (int row = firstRow; row < endRow; row++) {
            System.arraycopy(field, row * gridColumns + firstColumn, part, (row - firstRow) * columns(), columns());
        }
        return part;
    }

    /** Amounts of its cells by weights of cells that all lie in it, row after row. */
    double[] spread(CellWeights weights) {
        double[] part = new double[cells()];
        for (int k = 0; k < weights.cells().length; k++) {
            int row = weights.cells()[k] / gridColumns;
            int column = weights.cells()[k] % gridColumns;
            part[(row - firstRow) * columns() + column - firstColumn] += weights.weights()[k];
        }
        return part;
    }

    /** Writes values of its cells, row after row, into a field of the grid. */
    void paste(double[] part, double[] field) {
        for (int row = firstRow; row < endRow; row++) {
            System.arraycopy(part, (row - firstRow) * columns(), field, row * gridColumns + firstColumn, columns());
        }
    }

    /** Copies the values of its cells from one field of the grid to another. */
    void copy(double[] field, float[] target) {
        for (int row = firstRow; row < endRow; row++) {
            int offset = row * gridColumns;
            for (int k = offset + firstColumn; k < offset + endColumn; k++) {
                target[k] = (float) field[k];
            }
        }
    }
}
