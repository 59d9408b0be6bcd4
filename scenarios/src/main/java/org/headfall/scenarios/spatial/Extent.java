package org.headfall.scenarios.spatial;

/**
 * A rectangle in the plane of the scenario, its sides along the axes.
 *
 * @param west least x (m)
 * @param south least y (m)
 * @param east greatest x (m), more than {@code west}
 * @param north greatest y (m), more than {@code south}
 */
public record Extent(double west, double south, double east, double north) {

    /**
     * Checks the sides.
     *
     * @throws IllegalArgumentException if a side is not finite or the rectangle is empty; the message names the sides
     */
    public Extent {
        if (!(west < east && south < north && Double.isFinite(east - west) && Double.isFinite(north - south))) {
            throw new IllegalArgumentException("an extent needs west < east and south < north, found west " + west
                    + ", south " + south + ", east " + east + ", north " + north);
        }
    }

    /**
     * The extent of a rectilinear grid.
     *
     * @param edgesX ascending cell edges along x (m), at least two
     * @param edgesY ascending cell edges along y (m), at least two
     * @return the extent from the first to the last edges
     */
    public static Extent of(double[] edgesX, double[] edgesY) {
        return new Extent(edgesX[0], edgesY[0], edgesX[edgesX.length - 1], edgesY[edgesY.length - 1]);
    }

    /** {@return the length along x (m)} */
    public double width() {
        return east - west;
    }

    /** {@return the length along y (m)} */
    public double height() {
        return north - south;
    }

    /**
     * Whether a point lies in the rectangle or on its rim.
     *
     * @param x easting (m)
     * @param y northing (m)
     * @return true if it does
     */
    public boolean contains(double x, double y) {
        return x >= west && x <= east && y >= south && y <= north;
    }

    /**
     * Whether every corner could be a longitude and a latitude.
     *
     * <p>An area in metres can be like that only if it is under 400 m wide and stands at the origin, so that this is
     * a sign of coordinates in degrees wherever larger areas are meant.
     *
     * @return true if x stays within 180 (or 360) degrees and y within 90
     */
    public boolean fitsLongitudeLatitude() {
        return west >= -180 && east <= 360 && south >= -90 && north <= 90;
    }

    @Override
    public String toString() {
        return "x " + plain(west) + " to " + plain(east) + ", y " + plain(south) + " to " + plain(north);
    }

    private static String plain(double value) {
        return value == Math.rint(value) && Math.abs(value) < 1e15
                ? Long.toString((long) value)
                : Double.toString(value);
    }
}
