package org.headfall.solver.nearfield;

import org.headfall.solver.grid.RectilinearGrid;

/**
 * A rectangle of cells, counted within itself like a grid: row by row from the south-west corner.
 *
 * @param grid the grid
 * @param firstColumn western column
 * @param columns number of columns
 * @param firstRow southern row
 * @param rows number of rows
 */
record CellWindow(RectilinearGrid grid, int firstColumn, int columns, int firstRow, int rows) {

    int size() {
        return columns * rows;
    }

    /** Cell of the grid at a place of the window. */
    int cell(int column, int row) {
        return grid.cell(firstColumn + column, firstRow + row);
    }
}
