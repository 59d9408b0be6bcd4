package org.headfall.solver.nearfield;

import java.util.Arrays;

/**
 * Steady drawdown around a line sink of unit discharge up to a constant, {@code -ln(r)/(2 pi T)} (Thiem 1906). Where T
 * differs along x and y, r is measured after x is stretched by {@code (Ty/Tx)^(1/4)} and y by the inverse, which makes
 * flow radial again with {@code T = sqrt(Tx Ty)} and leaves areas as they are.
 */
final class LogarithmicDrawdown {

    /**
     * Share of the second difference that is taken from cell averages. With it the five-point scheme, which answers a
     * point source of storage or leakage by {@code h²/16} of its Laplacian too much, gives the head that the
     * differential equation has; found so by expansion in the cell, and confirmed by measured errors (DEVELOPERS.md).
     */
    private static final double SHARPENING = 1.0 / 16;

    private final double x;
    private final double y;
    private final double scaleX;
    private final double scaleY;
    private final double transmissivity;

    /**
     * Drawdown around a place.
     *
     * @param x easting of the line sink (m)
     * @param y northing (m)
     * @param transmissivityX T along x (m²/d)
     * @param transmissivityY T along y (m²/d)
     */
    LogarithmicDrawdown(double x, double y, double transmissivityX, double transmissivityY) {
        this.x = x;
        this.y = y;
        scaleX = Math.sqrt(Math.sqrt(transmissivityY / transmissivityX));
        scaleY = 1 / scaleX;
        transmissivity = Math.sqrt(transmissivityX * transmissivityY);
    }

    /** Stretched distance along x from the line sink (m), negative to the west. */
    double stretchedX(double easting) {
        return (easting - x) * scaleX;
    }

    /** Stretched distance along y from the line sink (m), negative to the south. */
    double stretchedY(double northing) {
        return (northing - y) * scaleY;
    }

    /** Radius that counts for a round bore after the stretching (m): the mean of the half axes of the ellipse. */
    double stretchedRadius(double radius) {
        return 0.5 * radius * (scaleX + scaleY);
    }

    /** Drawdown per discharge at a stretched distance (d/m²). */
    double at(double stretchedDistance) {
        return -Math.log(stretchedDistance) / (2 * Math.PI * transmissivity);
    }

    /** Stretched distance at which drawdown per discharge has a value (m). */
    double distanceOf(double drawdown) {
        return Math.exp(-drawdown * 2 * Math.PI * transmissivity);
    }

    /**
     * Share of the discharge that comes through a straight face from its far side, which is the angle that the face
     * subtends over the full circle.
     *
     * @param across stretched distance to the line of the face (m), negative if the face lies to the west or south;
     *     zero counts as that
     * @param from stretched distance along the face to its one end (m)
     * @param to stretched distance along it to its other end (m), above {@code from}
     * @return share (-): flow of drawdown toward increasing coordinates, so negative in the west and south
     */
    static double shareThrough(double across, double from, double to) {
        double distance = Math.abs(across);
        double angle = Math.atan2(to, distance) - Math.atan2(from, distance);
        return (across > 0 ? angle : -angle) / (2 * Math.PI);
    }

    /**
     * Values that stand for this drawdown on the grid: averages over the cells, sharpened by a sixteenth of their second
     * difference along each axis.
     *
     * @param window the cells
     * @return drawdown per discharge of each cell of the window (d/m²)
     */
    double[] onCells(CellWindow window) {
        double[] edgesX = window.grownEdgesX();
        double[] edgesY = window.grownEdgesY();
        int grown = window.columns() + 2;
        double[] averages = averages(
                Arrays.stream(edgesX).map(this::stretchedX).toArray(),
                Arrays.stream(edgesY).map(this::stretchedY).toArray());
        double[] values = new double[window.size()];
        for (int row = 0; row < window.rows(); row++) {
            for (int column = 0; column < window.columns(); column++) {
                int centre = (row + 1) * grown + column + 1;
                values[row * window.columns() + column] = averages[centre]
                        - SHARPENING * secondDifference(averages, centre, 1, edgesX, column)
                        - SHARPENING * secondDifference(averages, centre, grown, edgesY, row);
            }
        }
        return values;
    }

    /** Second derivative times the square of the cell's width, from unequal neighbours. */
    private static double secondDifference(double[] values, int centre, int stride, double[] edges, int before) {
        double width = edges[before + 2] - edges[before + 1];
        double toLower = 0.5 * (edges[before + 2] - edges[before]);
        double toUpper = 0.5 * (edges[before + 3] - edges[before + 1]);
        return width / toLower * (values[centre - stride] - values[centre])
                + width / toUpper * (values[centre + stride] - values[centre]);
    }

    /** Averages over rectangles, exact also over the one with the line sink in it. */
    private double[] averages(double[] edgesX, double[] edgesY) {
        int columns = edgesX.length - 1;
        double[] averages = new double[columns * (edgesY.length - 1)];
        double[] south = integrals(edgesX, edgesY[0]);
        for (int row = 0; row + 1 < edgesY.length; row++) {
            double[] north = integrals(edgesX, edgesY[row + 1]);
            for (int column = 0; column < columns; column++) {
                double integral = north[column + 1] - north[column] - south[column + 1] + south[column];
                double area = (edgesX[column + 1] - edgesX[column]) * (edgesY[row + 1] - edgesY[row]);
                averages[row * columns + column] = -integral / (area * 4 * Math.PI * transmissivity);
            }
            south = north;
        }
        return averages;
    }

    /** Antiderivative of {@code ln(x² + y²)} in x and y at the nodes of one grid line. */
    private static double[] integrals(double[] edgesX, double v) {
        double[] integrals = new double[edgesX.length];
        for (int i = 0; i < edgesX.length; i++) {
            double u = edgesX[i];
            integrals[i] = u == 0 || v == 0
                    ? 0
                    : u * v * (Math.log(u * u + v * v) - 3) + u * u * Math.atan(v / u) + v * v * Math.atan(u / v);
        }
        return integrals;
    }
}
