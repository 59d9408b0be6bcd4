package org.headfall.solver.nearfield;

/**
 * Steady drawdown around a line sink of unit discharge up to a constant, {@code -ln(r)/(2 pi T)} (Thiem 1906). Where T
 * differs along x and y, r is measured after x is stretched by {@code (Ty/Tx)^(1/4)} and y by the inverse, which makes
 * flow radial again with {@code T = sqrt(Tx Ty)} and leaves areas as they are. Immutable.
 */
public final class LogarithmicDrawdown {

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
    public LogarithmicDrawdown(double x, double y, double transmissivityX, double transmissivityY) {
        this.x = x;
        this.y = y;
        scaleX = Math.sqrt(Math.sqrt(transmissivityY / transmissivityX));
        scaleY = 1 / scaleX;
        transmissivity = Math.sqrt(transmissivityX * transmissivityY);
    }

    private LogarithmicDrawdown(double x, double y, double scaleX, double scaleY, double transmissivity) {
        this.x = x;
        this.y = y;
        this.scaleX = scaleX;
        this.scaleY = scaleY;
        this.transmissivity = transmissivity;
    }

    /** The same around another place. */
    LogarithmicDrawdown at(double easting, double northing) {
        return new LogarithmicDrawdown(easting, northing, scaleX, scaleY, transmissivity);
    }

    double easting() {
        return x;
    }

    double northing() {
        return y;
    }

    /** T that counts after the stretching (m²/d). */
    double transmissivity() {
        return transmissivity;
    }

    /** Stretched distance along x from the line sink (m), negative to the west. */
    double stretchedX(double easting) {
        return (easting - x) * scaleX;
    }

    /** Stretched distance along y from the line sink (m), negative to the south. */
    double stretchedY(double northing) {
        return (northing - y) * scaleY;
    }

    /**
     * Distance from the line sink after the stretching (m).
     *
     * @param easting easting (m)
     * @param northing northing (m)
     */
    public double stretchedDistance(double easting, double northing) {
        return Math.hypot(stretchedX(easting), stretchedY(northing));
    }

    /**
     * Radius that counts for a round bore after the stretching (m): the mean of the half axes of the ellipse.
     *
     * @param radius radius of the bore (m)
     */
    public double stretchedRadius(double radius) {
        return 0.5 * radius * (scaleX + scaleY);
    }

    /**
     * Drawdown per discharge at a stretched distance (d/m²).
     *
     * @param stretchedDistance the distance (m), positive
     */
    public double at(double stretchedDistance) {
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
     * Averages over the cells between grid lines, exact also over the one with the line sink in it.
     *
     * @param edgesX stretched distances of the lines along x, increasing (m)
     * @param edgesY stretched distances of the lines along y, increasing (m)
     * @return drawdown per discharge of each cell, row by row from the south-west corner (d/m²)
     */
    double[] averages(double[] edgesX, double[] edgesY) {
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
