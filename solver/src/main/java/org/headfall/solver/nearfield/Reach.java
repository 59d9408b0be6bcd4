package org.headfall.solver.nearfield;

import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;

/**
 * How far from a place the grid is corrected for the logarithm, in stretched distance: whole up to half the radius, less
 * and less from there on. Eight cells are taken, because in cells that widen outward in proportion to the distance every
 * doubling of it leaves the same error, and at least four times the longer side of the place's own cell, because short
 * cells beside long ones see the long side. Cells beyond 40 are left alone.
 *
 * @param radius distance beyond which nothing is corrected (m)
 */
record Reach(double radius) {

    private static final int USUAL_CELLS = 8;
    private static final int MOST_CELLS = 40;
    private static final double LEAST_OF_LONGER_SIDE = 4;

    static Reach of(RectilinearGrid grid, int cell, LogarithmicDrawdown drawdown) {
        int column = grid.column(cell);
        int row = grid.row(cell);
        double usual = Double.POSITIVE_INFINITY;
        double most = Double.POSITIVE_INFINITY;
        for (int side : new int[] {-1, 1}) {
            usual = Math.min(usual, Math.abs(drawdown.stretchedX(outerEdge(grid.x(), column, side * USUAL_CELLS))));
            usual = Math.min(usual, Math.abs(drawdown.stretchedY(outerEdge(grid.y(), row, side * USUAL_CELLS))));
            most = Math.min(most, Math.abs(drawdown.stretchedX(outerEdge(grid.x(), column, side * MOST_CELLS))));
            most = Math.min(most, Math.abs(drawdown.stretchedY(outerEdge(grid.y(), row, side * MOST_CELLS))));
        }
        double width = drawdown.stretchedX(grid.x().edge(column + 1))
                - drawdown.stretchedX(grid.x().edge(column));
        double height = drawdown.stretchedY(grid.y().edge(row + 1))
                - drawdown.stretchedY(grid.y().edge(row));
        double least = LEAST_OF_LONGER_SIDE * Math.max(width, height);
        return new Reach(Math.min(most, Double.isFinite(usual) ? Math.max(usual, least) : least));
    }

    /** Outer edge of the cell a number of cells away; a side on which the grid ends before sets no bound. */
    private static double outerEdge(Axis axis, int from, int cells) {
        int edge = cells < 0 ? from + cells : from + cells + 1;
        return edge < 0 || edge > axis.cells() ? Double.POSITIVE_INFINITY : axis.edge(edge);
    }

    /** Share of the correction at a stretched distance (-): 1 near by, 0 far off, smooth between. */
    double share(double distance) {
        double u = Math.max(0, Math.min(1, 2 * distance / radius - 1));
        return 1 - u * u * u * (10 - 15 * u + 6 * u * u);
    }

    /** The cells within reach. */
    CellWindow window(RectilinearGrid grid, int cell, LogarithmicDrawdown drawdown) {
        int west = grid.column(cell);
        while (west > 0 && -drawdown.stretchedX(grid.x().edge(west)) < radius) {
            west--;
        }
        int east = grid.column(cell);
        while (east + 1 < grid.columns() && drawdown.stretchedX(grid.x().edge(east + 1)) < radius) {
            east++;
        }
        int south = grid.row(cell);
        while (south > 0 && -drawdown.stretchedY(grid.y().edge(south)) < radius) {
            south--;
        }
        int north = grid.row(cell);
        while (north + 1 < grid.rows() && drawdown.stretchedY(grid.y().edge(north + 1)) < radius) {
            north++;
        }
        return new CellWindow(grid, west, east - west + 1, south, north - south + 1);
    }
}
