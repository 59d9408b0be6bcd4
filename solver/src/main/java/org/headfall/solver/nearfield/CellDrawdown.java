package org.headfall.solver.nearfield;

import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.Side;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;

/**
 * Values that stand for the logarithmic drawdown around a place on the cells. Away from the place they are those at the
 * centres of the cells, so that heads of cells are heads at their centres. Very close, where a long cell may reach past
 * the place, they are averages over the cells. In the cell of the place itself the value is such that the cells
 * hold the volume of the cone, as on an even grid of cells like it, and {@link #SHARE} more. Images behind sides add theirs.
 *
 * <p>Cells at a side of fixed head have the value that lets the true flow out through their outer face: so no face of
 * the rim needs a correction, and a bore takes all of its water from the cells, however near the side it stands. The price
 * is that heads of these cells are not those at their centres; {@link CentreHeads} puts them right where heads are shown.
 */
final class CellDrawdown {

    /**
     * What is added to the value of the place's own cell, times T. It changes the second moment M along each axis of the
     * weights that follow from the values, on an even grid of squares of side h to {@code M = (5/24 - 2 SHARE) h²}. The five-point
     * scheme takes {@code k² - h² (kx⁴ + ky⁴)/12} for the square of the wave number k, and weights at source and receptor
     * give away {@code M k²}; in a cone of leakage factor B, {@code M = h²/8} makes the two errors of the order {@code h²/B²
     * ln(B/h)} cancel. That is 1/24; with the terms after it 1/20 is nearer where B is 2 to 8 cells (DEVELOPERS.md).
     */
    private static final double SHARE = 1.0 / 20;

    /** From how many longer sides of the own cell on values are those at centres, at least. */
    private static final double CENTRES_FROM = 0.5;

    /**
     * The same per longer over shorter side. Centres taken nearer in long cells make so sharp a spike of a few short sides
     * that the grid would carry more than all of the drawdown.
     */
    private static final double CENTRES_FROM_PER_ASPECT = 0.1;

    /** Longer sides of the own cell within which the volume of other cells is counted. */
    private static final double COUNTED_SIDES = 4;

    private final RectilinearGrid grid;
    private final int own;
    private final MirroredDrawdown mirrored;
    private final LogarithmicDrawdown drawdown;
    private final MirrorSides sides;
    private final double transmissivityX;
    private final double transmissivityY;
    private final double centresFrom;
    private final double ownValue;

    /**
     * Values around a place.
     *
     * @param aquifer the aquifer
     * @param own cell of the place
     * @param mirrored drawdown around the place and its images
     * @param sides the sides at which it is mirrored
     */
    CellDrawdown(Aquifer aquifer, int own, MirroredDrawdown mirrored, MirrorSides sides) {
        this.grid = aquifer.grid();
        this.own = own;
        this.mirrored = mirrored;
        this.drawdown = mirrored.own();
        this.sides = sides;
        transmissivityX = aquifer.transmissivityX()[own];
        transmissivityY = aquifer.transmissivityY()[own];
        double west = west(own);
        double south = south(own);
        double width = east(own) - west;
        double height = north(own) - south;
        double longer = Math.max(width, height);
        double aspect = longer / Math.min(width, height);
        centresFrom = longer * Math.max(CENTRES_FROM, CENTRES_FROM_PER_ASPECT * aspect);
        ownValue = meanOfCone(west, width, south, height) + SHARE / drawdown.transmissivity();
    }

    /** Drawdown per discharge that stands for the logarithms in a cell (d/m²). */
    double in(int cell) {
        double conductance = 0;
        double outflow = 0;
        for (Side side : sides.mirrors().keySet()) {
            if (sides.holds(side, cell)) {
                conductance += conductanceOfRim(side, cell);
                outflow += outflow(side, cell);
            }
        }
        return conductance > 0 ? outflow / conductance : atCentre(cell);
    }

    /** The same by the rule for cells away from sides of fixed head: at the centre of the cell. */
    double atCentre(int cell) {
        double byOwn = cell == own ? ownValue : value(cell, drawdown);
        return byOwn + mirrored.sumOfImages(image -> value(cell, image));
    }

    /** Whether a cell has the value that lets the true flow out through a face at which head is held. */
    boolean isAtFixedHead(int cell) {
        return sides.mirrors().keySet().stream().anyMatch(side -> sides.holds(side, cell));
    }

    /** Conductance of half a cell to its outer face, if T were everywhere that of the place's cell (m²/d). */
    private double conductanceOfRim(Side side, int cell) {
        double width = grid.x().width(grid.column(cell));
        double height = grid.y().width(grid.row(cell));
        return side.countedByRow()
                ? transmissivityX * height / (0.5 * width)
                : transmissivityY * width / (0.5 * height);
    }

    private double outflow(Side side, int cell) {
        int i = grid.column(cell);
        int j = grid.row(cell);
        Axis x = grid.x();
        Axis y = grid.y();
        return switch (side) {
            case WEST -> -mirrored.throughEast(x.edge(i), y.edge(j), y.edge(j + 1));
            case EAST -> mirrored.throughEast(x.edge(i + 1), y.edge(j), y.edge(j + 1));
            case SOUTH -> -mirrored.throughNorth(y.edge(j), x.edge(i), x.edge(i + 1));
            case NORTH -> mirrored.throughNorth(y.edge(j + 1), x.edge(i), x.edge(i + 1));
        };
    }

    /** Value in a cell of a logarithm whose sink lies in another. */
    private double value(int cell, LogarithmicDrawdown around) {
        double west = around.stretchedX(grid.x().edge(grid.column(cell)));
        double east = around.stretchedX(grid.x().edge(grid.column(cell) + 1));
        double south = around.stretchedY(grid.y().edge(grid.row(cell)));
        double north = around.stretchedY(grid.y().edge(grid.row(cell) + 1));
        double distance = Math.hypot(0.5 * (west + east), 0.5 * (south + north));
        if (distance >= centresFrom) {
            return around.at(distance);
        }
        double[] edgesX = {west, east};
        double[] edgesY = {south, north};
        return value(distance, around.averages(edgesX, edgesY)[0]);
    }

    /** The same for all cells of a window. */
    double[] in(CellWindow window) {
        double[] values = new double[window.size()];
        for (int place = 0; place < values.length; place++) {
            values[place] = in(window.cell(place % window.columns(), place / window.columns()));
        }
        return values;
    }

    /** Value of another cell than the own, from the distance of its centre (m) and its average (d/m²). */
    private double value(double distance, double average) {
        double u = Math.max(0, Math.min(1, 2 * distance / centresFrom - 1));
        double atCentre = u * u * (3 - 2 * u);
        // An image behind a narrow strip may stand right at a centre, where the logarithm has no value.
        return atCentre == 0 ? average : average + atCentre * (drawdown.at(distance) - average);
    }

    /**
     * Average over the own cell, and what values of other cells fall short of their averages, on an even grid. Far cells
     * count less and less, since the volume of all of them is a sum that depends on its order.
     */
    private double meanOfCone(double west, double width, double south, double height) {
        Reach counted = new Reach(COUNTED_SIDES * Math.max(width, height));
        int aside = (int) Math.ceil(counted.radius() / width);
        int above = (int) Math.ceil(counted.radius() / height);
        double[] edgesX = evenEdges(west, width, aside);
        double[] edgesY = evenEdges(south, height, above);
        double[] averages = drawdown.averages(edgesX, edgesY);
        int columns = 2 * aside + 1;
        int centre = above * columns + aside;
        double mean = averages[centre];
        for (int place = 0; place < averages.length; place++) {
            if (place != centre) {
                double distance =
                        Math.hypot(edgesX[place % columns] + 0.5 * width, edgesY[place / columns] + 0.5 * height);
                mean += counted.share(distance) * (averages[place] - value(distance, averages[place]));
            }
        }
        return mean;
    }

    /** Edges of a cell and of as many like it on either side. */
    private static double[] evenEdges(double lower, double width, int aside) {
        double[] edges = new double[2 * aside + 2];
        for (int i = 0; i < edges.length; i++) {
            edges[i] = lower + (i - aside) * width;
        }
        return edges;
    }

    private double west(int cell) {
        return drawdown.stretchedX(grid.x().edge(grid.column(cell)));
    }

    private double east(int cell) {
        return drawdown.stretchedX(grid.x().edge(grid.column(cell) + 1));
    }

    private double south(int cell) {
        return drawdown.stretchedY(grid.y().edge(grid.row(cell)));
    }

    private double north(int cell) {
        return drawdown.stretchedY(grid.y().edge(grid.row(cell) + 1));
    }
}
