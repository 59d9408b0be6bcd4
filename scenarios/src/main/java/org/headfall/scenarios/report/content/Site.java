package org.headfall.scenarios.report.content;

import java.util.List;

/**
 * A bore, spring or watched point.
 *
 * @param name unique name
 * @param kind what it is
 * @param holder who holds it, blank if not said
 * @param x easting (m)
 * @param y northing (m)
 * @param ground ground level (m above datum) or NaN
 * @param outlet level of the outlet (m above datum) or NaN
 * @param aquiferTop top of the aquifer there (m above datum) or NaN
 * @param intake level of the pump intake (m above datum) or NaN
 * @param lowestLevel water level at which pumping is cut back (m above datum) or NaN
 * @param proposed whether it is a proposed bore
 * @param operation how it is operated, in words, blank if it is no bore
 * @param states what it does at each date of the map
 */
public record Site(
        String name,
        SiteKind kind,
        String holder,
        double x,
        double y,
        double ground,
        double outlet,
        double aquiferTop,
        double intake,
        double lowestLevel,
        boolean proposed,
        String operation,
        List<SiteState> states) {

    /** Copies the states. */
    public Site {
        states = List.copyOf(states);
    }
}
