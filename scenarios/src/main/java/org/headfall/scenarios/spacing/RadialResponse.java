package org.headfall.scenarios.spacing;

import java.util.function.DoubleUnaryOperator;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;

/**
 * Drawdown by a unit discharge at a place, by distance from it: the mean around a circle of a field on cells; within some
 * cells of the place, where a field cannot follow, straight over the logarithm of the distance to its wall (Thiem 1906).
 */
final class RadialResponse implements DoubleUnaryOperator {

    private static final int DIRECTIONS = 48;
    private static final double NEAR_CELLS = 3;

    private final RectilinearGrid grid;
    private final boolean[] active;
    private final double[] field;
    private final double x;
    private final double y;
    private final double wall;
    private final double atWall;
    private final double near;
    private final double atNear;

    /**
     * Response around a place.
     *
     * @param grid the grid
     * @param active cells of the aquifer
     * @param field drawdown per discharge of each cell (d/m²)
     * @param x easting of the place (m)
     * @param y northing (m)
     * @param wall radius of the bore (m)
     * @param atWall drawdown per discharge at its wall (d/m²)
     */
    RadialResponse(
            RectilinearGrid grid, boolean[] active, double[] field, double x, double y, double wall, double atWall) {
        this.grid = grid;
        this.active = active;
        this.field = field;
        this.x = x;
        this.y = y;
        this.wall = wall;
        this.atWall = atWall;
        near = NEAR_CELLS * Math.sqrt(grid.area(grid.locate(x, y)));
        atNear = around(near);
    }

    @Override
    public double applyAsDouble(double distance) {
        if (distance >= near) {
            return around(distance);
        }
        double share = Math.log(Math.max(distance, wall) / wall) / Math.log(near / wall);
        return atWall + share * (atNear - atWall);
    }

    private double around(double distance) {
        double sum = 0;
        int count = 0;
        for (int i = 0; i < DIRECTIONS; i++) {
            double angle = 2 * Math.PI * i / DIRECTIONS;
            double value = at(x + distance * Math.cos(angle), y + distance * Math.sin(angle));
            if (!Double.isNaN(value)) {
                sum += value;
                count++;
            }
        }
        // Beyond the grid on all sides there is nothing left to share.
        return count == 0 ? 0 : sum / count;
    }

    /** Between the four centres around a point; the nearest where one of them is no part of the aquifer. */
    private double at(double easting, double northing) {
        int cell = grid.locate(easting, northing);
        if (cell < 0 || !active[cell]) {
            return Double.NaN;
        }
        int column = lower(grid.x(), easting);
        int row = lower(grid.y(), northing);
        double u = share(grid.x(), column, easting);
        double v = share(grid.y(), row, northing);
        int first = row * grid.columns() + column;
        int[] cells = {first, first + 1, first + grid.columns(), first + grid.columns() + 1};
        double[] weights = {(1 - u) * (1 - v), u * (1 - v), (1 - u) * v, u * v};
        double sum = 0;
        for (int i = 0; i < cells.length; i++) {
            if (!active[cells[i]]) {
                return field[cell];
            }
            sum += weights[i] * field[cells[i]];
        }
        return sum;
    }

    private static int lower(Axis axis, double position) {
        int index = 0;
        while (index < axis.cells() - 2 && axis.centre(index + 1) <= position) {
            index++;
        }
        return index;
    }

    private static double share(Axis axis, int index, double position) {
        double share = (position - axis.centre(index)) / (axis.centre(index + 1) - axis.centre(index));
        return Math.max(0, Math.min(1, share));
    }
}
