package org.headfall.scenarios.spacing;

import java.util.function.DoubleUnaryOperator;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;

/**
 * Drawdown by a unit discharge at a place, by distance from it: the mean around a circle of a field on cells. A field on cells
 * cannot follow the logarithm around a bore (Thiem 1906), so that is taken out before values are found between cells, and put
 * back; what is left is smooth up to the wall.
 */
final class RadialResponse implements DoubleUnaryOperator {

    private static final int DIRECTIONS = 48;

    private final RectilinearGrid grid;
    private final boolean[] active;
    private final double[] smooth;
    private final double x;
    private final double y;
    private final double wall;
    private final double atWall;
    private final int cell;
    private final double slope;

    /**
     * Response around a place.
     *
     * @param aquifer the aquifer
     * @param field drawdown per discharge of each cell (d/m²)
     * @param x easting of the place (m)
     * @param y northing (m)
     * @param wall radius of the bore (m)
     * @param atWall drawdown per discharge at its wall (d/m²)
     */
    RadialResponse(Aquifer aquifer, double[] field, double x, double y, double wall, double atWall) {
        grid = aquifer.grid();
        active = aquifer.active();
        this.x = x;
        this.y = y;
        this.wall = wall;
        this.atWall = atWall;
        cell = grid.locate(x, y);
        slope = 1 / (2 * Math.PI * aquifer.effectiveTransmissivity(cell));
        smooth = withoutLogarithm(field);
    }

    @Override
    public double applyAsDouble(double distance) {
        return distance <= wall ? atWall : around(distance) - logarithm(distance);
    }

    /** Drawdown below that at the wall by the logarithm alone (d/m²). */
    private double logarithm(double distance) {
        return slope * Math.log(Math.max(distance, wall) / wall);
    }

    /** Drawdown without the logarithm in the middle of each cell; in that of the place it is the one at the wall. */
    private double[] withoutLogarithm(double[] field) {
        double[] without = new double[field.length];
        for (int of = 0; of < field.length; of++) {
            without[of] =
                    of == cell ? atWall : field[of] + logarithm(Math.hypot(grid.centreX(of) - x, grid.centreY(of) - y));
        }
        return without;
    }

    /** Mean around a circle, without the logarithm. */
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
        return count == 0 ? logarithm(distance) : sum / count;
    }

    /** Between the four centres around a point; the nearest where one of them is no part of the aquifer. */
    private double at(double easting, double northing) {
        int own = grid.locate(easting, northing);
        if (own < 0 || !active[own]) {
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
                return smooth[own];
            }
            sum += weights[i] * smooth[cells[i]];
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
