package org.headfall.scenarios.recording;

import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;

/**
 * Head at a point, bilinear between the centres of the four cells around it. Beyond the outermost centres, and beside
 * cells that are not active, the head of the nearest active corner cells counts, with their weights scaled up.
 */
final class PointHead {

    private final int[] cells = new int[4];
    private final double[] weights = new double[4];

    PointHead(Aquifer aquifer, Station station) {
        RectilinearGrid grid = aquifer.grid();
        int column = lowerNeighbour(grid.x(), station.x());
        int row = lowerNeighbour(grid.y(), station.y());
        double east = share(grid.x(), column, station.x());
        double north = share(grid.y(), row, station.y());
        int nextColumn = Math.min(column + 1, grid.columns() - 1);
        int nextRow = Math.min(row + 1, grid.rows() - 1);
        set(0, grid.cell(column, row), (1 - east) * (1 - north), aquifer.active());
        set(1, grid.cell(nextColumn, row), east * (1 - north), aquifer.active());
        set(2, grid.cell(column, nextRow), (1 - east) * north, aquifer.active());
        set(3, grid.cell(nextColumn, nextRow), east * north, aquifer.active());
        scale(station);
    }

    double at(double[] head) {
        double sum = 0;
        for (int corner = 0; corner < 4; corner++) {
            if (weights[corner] > 0) {
                sum += weights[corner] * head[cells[corner]];
            }
        }
        return sum;
    }

    private void set(int corner, int cell, double weight, boolean[] active) {
        cells[corner] = cell;
        weights[corner] = active[cell] ? weight : 0;
    }

    private void scale(Station station) {
        double total = weights[0] + weights[1] + weights[2] + weights[3];
        if (!(total > 0)) {
            throw new IllegalArgumentException("protected point '" + station.name() + "' at (" + station.x() + ", "
                    + station.y() + ") m lies outside the active aquifer");
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
