package org.headfall.scenarios.planning;

import java.util.List;

/**
 * The map of the largest rate of a new bore. Fields have one value a cell, from west to east and then from south to north,
 * NaN where there is nothing to say; they are not copied and must not change.
 *
 * @param x eastings of the centres of the columns (m), increasing
 * @param y northings of the centres of the rows (m), increasing
 * @param largestRate largest rate (L/s)
 * @param ruling number of what decides it
 * @param reasons names of what decides, by number
 * @param lift lift at the wanted or largest rate (m)
 * @param energy energy of that lift (kWh/ML)
 * @param places places on the map
 */
@SuppressWarnings("ArrayRecordComponent") // fields of 10⁵ cells, shared and never compared
public record PlanningMap(
        double[] x,
        double[] y,
        double[] largestRate,
        double[] ruling,
        List<String> reasons,
        double[] lift,
        double[] energy,
        List<Place> places)
        implements PlanningView {

    /** Copies the lists. */
    public PlanningMap {
        reasons = List.copyOf(reasons);
        places = List.copyOf(places);
    }

    /** What a place is. */
    public enum Kind {
        /** A chosen site. */
        SITE,
        /** A bore that is there, or in the document. */
        BORE,
        /** A spring. */
        SPRING,
        /** A protected point. */
        POINT
    }

    /**
     * A place.
     *
     * @param kind what it is
     * @param name its name
     * @param label what stands beside it on the map; empty for nothing
     * @param x easting (m)
     * @param y northing (m)
     */
    public record Place(Kind kind, String name, String label, double x, double y) {}
}
