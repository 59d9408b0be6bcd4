package org.headfall.solver.aquifer;

import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;

/**
 * Head at a point, bilinear between the centres of the four cells around it. Beyond the outermost centres, and beside
 * cells that are not active, the head of the nearest active corner cells counts, with their weights scaled up.
 */
public final class InterpolatedHead {

    private final int[] cells = new int[4];
    private final double[] weights = new double[4];

    /**
     * Head at a point.
     *
     * @param aquifer the aquifer
     * @param x easting (m)
     * @param y northing (m)
     * @throws IllegalArgumentException if the point lies outside the grid or among cells that are not active
     */
    public InterpolatedHead(Aquifer aquifer, double x, double y) {
        RectilinearGrid grid = aquifer.grid();
        int column = lowerNeighbour(grid.x(), x);
        int row = lowerNeighbour(grid.y(), y);
        double east = share(grid.x(), column, x);
        double north = share(grid.y(), row, y);
        int nextColumn = Math.min(column + 1, grid.columns() - 1);
        int nextRow = Math.min(row + 1, grid.rows() - 1);
        set(0, grid.cell(column, row), (1 - east) * (1 - north), aquifer.active());
        set(1, grid.cell(nextColumn, row), east * (1 - north), aquifer.active());
        set(2, grid.cell(column, nextRow), (1 - east) * north, aquifer.active());
        set(3, grid.cell(nextColumn, nextRow), east * north, aquifer.active());
        scale(x, y);
    }

    /**
     * Value at the point.
     *
     * @param head value of each cell (m)
     * @return value at the point (m)
     */
    public double at(double[] head) {
        return at(head, 0);
    }

    /**
     * Value at the point, of one of several fields in an array.
     *
     * @param heads values of each cell of one field after the other (m)
     * @param from index of the field's first cell
     * @return value at the point (m)
     */
    public double at(double[] heads, int from) {
        double sum = 0;
        for (int corner = 0; corner < 4; corner++) {
            if (weights[corner] > 0) {
                sum += weights[corner] * heads[from + cells[corner]];
            }
        }
        return sum;
    }

    private void set(int corner, int cell, double weight, boolean[] active) {
        cells[corner] = cell;
        weights[corner] = active[cell] ? weight : 0;
    }

    private void scale(double x, double y) {
        double total = weights[0] + weights[1] + weights[2] + weights[3];
        if (!(total > 0)) {
            throw new IllegalArgumentException("the point (" + x + ", " + y + ") m lies outside the active aquifer");
        }
        for (int corner = 0; corner < 4; corner++) {
            weights[corner] /= total;
        }
    }

    /** The last cell whose centre is not beyond the position, 0 before the first centre. */
    private static int lowerNeighbour(Axis axis, double position) {
        int cell = axis.locate(position);
        if (cell < 0) {
            throw new IllegalArgumentException("position " + position + " m lies outside the grid, " + axis);
        }
        return axis.centre(cell) > position ? Math.max(cell - 1, 0) : cell;
    }

    private static double share(Axis axis, int lower, double position) {
        if (lower + 1 >= axis.cells()) {
            return 0;
        }
        double share = (position - axis.centre(lower)) / (axis.centre(lower + 1) - axis.centre(lower));
        return Math.max(0, share);
    }
}
