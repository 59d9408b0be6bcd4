package org.headfall.scenarios.raster;

import java.util.ArrayList;
import java.util.List;
import org.headfall.scenarios.spatial.Extent;

/**
 * Whether a raster has values everywhere in an area.
 *
 * @param raster extent of the raster
 * @param needed the area
 * @param gaps the rectangles of the area that lie beyond the raster, at most four, none overlapping
 * @param holes number of cells without data whose centres lie in the area
 * @param firstHoles centres of the first of them, from the south-west, at most ten
 * @param degrees whether the raster seems to be in degrees while the area is not
 */
public record RasterCoverage(
        Extent raster, Extent needed, List<Extent> gaps, int holes, List<Hole> firstHoles, boolean degrees) {
    private static final int LISTED_HOLES = 10;
    /** Gaps below this share of a raster cell are rounding of the corner. */
    private static final double TOLERANCE = 1e-3;

    /**
     * The centre of a cell without data.
     *
     * @param x easting (m)
     * @param y northing (m)
     */
    public record Hole(double x, double y) {}

    /** Copies the lists. */
    public RasterCoverage {
        gaps = List.copyOf(gaps);
        firstHoles = List.copyOf(firstHoles);
    }

    /**
     * Compares a raster with an area.
     *
     * @param raster the raster
     * @param needed the area that needs values
     * @return what is missing
     */
    public static RasterCoverage of(Raster raster, Extent needed) {
        Extent extent = raster.extent();
        List<Hole> first = new ArrayList<>();
        int holes = 0;
        for (int row = 0; row < raster.rows(); row++) {
            for (int column = 0; column < raster.columns(); column++) {
                boolean hole = Double.isNaN(raster.value(column, row))
                        && needed.contains(raster.centreX(column), raster.centreY(row));
                if (hole && ++holes <= LISTED_HOLES) {
                    first.add(new Hole(raster.centreX(column), raster.centreY(row)));
                }
            }
        }
        boolean degrees = extent.fitsLongitudeLatitude() && !needed.fitsLongitudeLatitude();
        return new RasterCoverage(extent, needed, gaps(raster, needed), holes, first, degrees);
    }

    /** {@return true if every place of the area has a value} */
    public boolean complete() {
        return gaps.isEmpty() && holes == 0;
    }

    /**
     * What is missing, in words.
     *
     * @return one line with coordinates, or "nothing"
     */
    public String missing() {
        List<String> parts = new ArrayList<>();
        if (!gaps.isEmpty()) {
            parts.add("the raster (" + raster + ") does not reach "
                    + String.join("; ", gaps.stream().map(Extent::toString).toList()));
        }
        if (degrees) {
            parts.add("the raster seems to be in degrees, the area is in metres");
        }
        if (holes > 0) {
            List<String> places = firstHoles.stream()
                    .map(h -> "(" + h.x() + ", " + h.y() + ")")
                    .toList();
            parts.add(holes + " cells without data, at " + String.join(" ", places)
                    + (holes > places.size() ? " ..." : ""));
        }
        return parts.isEmpty() ? "nothing" : String.join("; ", parts);
    }

    private static List<Extent> gaps(Raster raster, Extent needed) {
        Extent has = raster.extent();
        double slackX = TOLERANCE * has.width() / raster.columns();
        double slackY = TOLERANCE * has.height() / raster.rows();
        List<Extent> gaps = new ArrayList<>();
        double west = clamp(has.west(), needed.west(), needed.east());
        double east = clamp(has.east(), needed.west(), needed.east());
        addGap(gaps, needed.west(), needed.south(), west, needed.north(), slackX, slackY);
        addGap(gaps, east, needed.south(), needed.east(), needed.north(), slackX, slackY);
        double south = clamp(has.south(), needed.south(), needed.north());
        double north = clamp(has.north(), needed.south(), needed.north());
        addGap(gaps, west, needed.south(), east, south, slackX, slackY);
        addGap(gaps, west, north, east, needed.north(), slackX, slackY);
        return gaps;
    }

    private static void addGap(
            List<Extent> gaps, double west, double south, double east, double north, double slackX, double slackY) {
        if (east - west > slackX && north - south > slackY) {
            gaps.add(new Extent(west, south, east, north));
        }
    }

    private static double clamp(double value, double low, double high) {
        return Math.max(low, Math.min(high, value));
    }
}
