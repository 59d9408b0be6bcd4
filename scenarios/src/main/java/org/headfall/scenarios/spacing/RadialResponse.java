package org.headfall.scenarios.spacing;

import java.util.function.DoubleUnaryOperator;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.nearfield.LogarithmicDrawdown;

/**
 * Drawdown by a unit discharge at a place, by distance from it: the mean around a circle of a field on cells. A field on cells
 * cannot follow the logarithm around a bore (Thiem 1906), so that is taken out before values are found between cells, and put
 * back; what is left is smooth up to the wall. Where T differs along x and y the logarithm is that of the stretched distance
 * ({@link LogarithmicDrawdown}), which differs around a circle. What layouts find by the mean around it is then the mean of
 * their drawdown over all directions that they may be turned to. Immutable.
 */
final class RadialResponse implements DoubleUnaryOperator {

    private static final int DIRECTIONS = 48;

    private final RectilinearGrid grid;
    private final boolean[] active;
    private final LogarithmicDrawdown logarithm;
    private final double x;
    private final double y;
    private final double wall;
    private final double atWall;
    private final double wallAlone;
    private final double atWallAlone;
    private final double[] smooth;

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
        int cell = grid.locate(x, y);
        logarithm = new LogarithmicDrawdown(x, y, aquifer.transmissivityX()[cell], aquifer.transmissivityY()[cell]);
        wallAlone = logarithm.stretchedRadius(wall);
        atWallAlone = logarithm.at(wallAlone);
        smooth = withoutLogarithm(field, cell);
    }

    @Override
    public double applyAsDouble(double distance) {
        return distance <= wall ? atWall : around(distance);
    }

    /** Drawdown below that at the wall by the logarithm alone (d/m²). */
    private double fromWall(double easting, double northing) {
        return atWallAlone - logarithm.at(Math.max(wallAlone, logarithm.stretchedDistance(easting, northing)));
    }

    /** Drawdown without the logarithm in the middle of each cell; in that of the place it is the one at the wall. */
    private double[] withoutLogarithm(double[] field, int cell) {
        double[] without = new double[field.length];
        for (int of = 0; of < field.length; of++) {
            without[of] = of == cell ? atWall : field[of] + fromWall(grid.centreX(of), grid.centreY(of));
        }
        return without;
    }

    /** Mean around a circle, as far as that lies in the aquifer: beyond it on all sides there is nothing left to share. */
    private double around(double distance) {
        double sum = 0;
        int count = 0;
        for (int i = 0; i < DIRECTIONS; i++) {
            double angle = 2 * Math.PI * i / DIRECTIONS;
            double easting = x + distance * Math.cos(angle);
            double northing = y + distance * Math.sin(angle);
            double value = at(easting, northing);
            if (!Double.isNaN(value)) {
                sum += value - fromWall(easting, northing);
                count++;
            }
        }
        return count == 0 ? 0 : sum / count;
    }

    /** Between the four centres around a point; the nearest where one of them is no part of the aquifer. */
    private double at(double easting, double northing) {
        int own = grid.locate(easting, northing);
        if (own < 0 || !active[own]) {
            return Double.NaN;
        }
        int column = lower(grid.x(), grid.column(own), easting);
        int row = lower(grid.y(), grid.row(own), northing);
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

    /** The cell whose centre and that of the next one a position lies between, by the cell that it lies in. */
    private static int lower(Axis axis, int own, double position) {
        int index = position < axis.centre(own) ? own - 1 : own;
        return Math.max(0, Math.min(axis.cells() - 2, index));
    }

    private static double share(Axis axis, int index, double position) {
        double share = (position - axis.centre(index)) / (axis.centre(index + 1) - axis.centre(index));
        return Math.max(0, Math.min(1, share));
    }
}
