package org.headfall.solver.nearfield;

import org.headfall.solver.grid.Axis;
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

    /** Edges along x of the window and of one more column on each side (m): columns + 3 values. */
    double[] grownEdgesX() {
        return grownEdges(grid.x(), firstColumn, columns);
    }

    /** Edges along y of the window and of one more row on each side (m): rows + 3 values. */
    double[] grownEdgesY() {
        return grownEdges(grid.y(), firstRow, rows);
    }

    /** Beyond the end of the grid a cell as wide as the last one is thought on. */
    private static double[] grownEdges(Axis axis, int first, int count) {
        double[] edges = new double[count + 3];
        for (int i = 0; i < edges.length; i++) {
            int edge = first + i - 1;
            if (edge < 0) {
                edges[i] = axis.start() - axis.width(0);
            } else if (edge > axis.cells()) {
                edges[i] = axis.end() + axis.width(axis.cells() - 1);
            } else {
                edges[i] = axis.edge(edge);
            }
        }
        return edges;
    }
}
