package org.headfall.scenarios.planning;

import java.util.List;

/**
 * Rates that bores share: where they are taken and what they keep, and how they go over time. Arrays are not copied and must
 * not change.
 *
 * @param x eastings of the centres of the columns of cells (m), increasing
 * @param y northings of the centres of the rows of cells (m), increasing
 * @param inside whether each cell is of the aquifer, from west to east and then from south to north
 * @param places places on the map
 * @param steps rates over time
 */
@SuppressWarnings("ArrayRecordComponent") // a field of 10⁵ cells, shared and never compared
public record PlanningRates(double[] x, double[] y, boolean[] inside, List<Place> places, RateSteps steps)
        implements PlanningView {

    /** Copies the list. */
    public PlanningRates {
        places = List.copyOf(places);
    }

    /** What a place is. */
    public enum Kind {
        /** A bore that has a rate of those looked for. */
        SHARING,
        /** A bore that was looked at and takes nothing. */
        RESTING,
        /** Another bore of the document. */
        BORE,
        /** A spring. */
        SPRING,
        /** A protected point. */
        POINT
    }

    /** What there is to be said of limits at a place. */
    public enum Mark {
        /** None counts there. */
        NONE,
        /** All are kept with something left. */
        KEPT,
        /** One is used up. */
        BINDS,
        /** One has to give way. */
        GIVES_WAY
    }

    /**
     * A place.
     *
     * @param kind what it is
     * @param name its name
     * @param x easting (m)
     * @param y northing (m)
     * @param rate mean taking (L/s), by which its circle is drawn; 0 for what is no sharing bore
     * @param mark what there is to be said of limits there
     * @param words what is said of it besides its name, a line each
     */
    public record Place(Kind kind, String name, double x, double y, double rate, Mark mark, List<String> words) {

        /** Copies the list. */
        public Place {
            words = List.copyOf(words);
        }
    }
}
