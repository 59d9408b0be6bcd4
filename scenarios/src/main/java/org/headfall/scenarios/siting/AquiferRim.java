package org.headfall.scenarios.siting;

import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;

/** The rim of an aquifer: the sides of the grid, and the cells inside it that are no part of the aquifer. */
final class AquiferRim {

    private final RectilinearGrid grid;
    private final boolean[] active;

    AquiferRim(Aquifer aquifer) {
        grid = aquifer.grid();
        active = aquifer.active();
    }

    /**
     * Cells whose centre lies nearer to the rim than a distance.
     *
     * @param distance the distance (m)
     * @return a flag a cell; those that are no part of the aquifer have no meaning
     */
    boolean[] cellsWithin(double distance) {
        boolean[] within = new boolean[active.length];
        for (int cell = 0; cell < active.length; cell++) {
            within[cell] = toSide(cell) < distance;
        }
        for (int cell = 0; cell < active.length; cell++) {
            // Others inside are farther than one of these from every cell of the aquifer.
            if (!active[cell] && hasActiveNeighbour(cell)) {
                markAround(cell, distance, within);
            }
        }
        return within;
    }

    private double toSide(int cell) {
        double x = grid.centreX(cell);
        double y = grid.centreY(cell);
        return Math.min(
                Math.min(x - grid.x().start(), grid.x().end() - x),
                Math.min(y - grid.y().start(), grid.y().end() - y));
    }

    /** Whether one of the eight cells around is part of the aquifer. */
    private boolean hasActiveNeighbour(int cell) {
        int column = grid.column(cell);
        int row = grid.row(cell);
        for (int j = Math.max(0, row - 1); j <= Math.min(grid.rows() - 1, row + 1); j++) {
            for (int i = Math.max(0, column - 1); i <= Math.min(grid.columns() - 1, column + 1); i++) {
                if (active[j * grid.columns() + i]) {
                    return true;
                }
            }
        }
        return false;
    }

    /** Marks cells whose centre lies nearer than a distance to a cell, whose rectangle counts, not its centre. */
    private void markAround(int cell, double distance, boolean[] within) {
        int column = grid.column(cell);
        int row = grid.row(cell);
        for (int step = -1; step <= 1; step += 2) {
            for (int j = step < 0 ? row : row + 1; j >= 0 && j < grid.rows(); j += step) {
                double up = gap(grid.y(), row, grid.y().centre(j));
                if (up >= distance) {
                    break;
                }
                markRow(column, j, distance, up, within);
            }
        }
    }

    private void markRow(int column, int row, double distance, double up, boolean[] within) {
        for (int step = -1; step <= 1; step += 2) {
            for (int i = step < 0 ? column : column + 1; i >= 0 && i < grid.columns(); i += step) {
                if (Math.hypot(gap(grid.x(), column, grid.x().centre(i)), up) >= distance) {
                    break;
                }
                within[row * grid.columns() + i] = true;
            }
        }
    }

    /** Distance along an axis from a position to a cell of it (m), zero within the cell. */
    private static double gap(Axis axis, int cell, double position) {
        return Math.max(0, Math.max(axis.edge(cell) - position, position - axis.edge(cell + 1)));
    }
}
