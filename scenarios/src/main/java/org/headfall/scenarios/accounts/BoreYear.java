package org.headfall.scenarios.accounts;

import java.util.OptionalDouble;

/**
 * What one bore took in a water year.
 *
 * @param taken volume by the discharges of the run (m³), absent if the run has no part in the year
 * @param wholeYear whether the run lasts for all of the year
 * @param hasMeter whether there are readings of a meter, of whatever time
 * @param metered volume by the meter (m³), absent unless its readings reach over the year
 * @param entitlement what may be taken in a year (m³), absent if not known
 */
public record BoreYear(
        OptionalDouble taken, boolean wholeYear, boolean hasMeter, OptionalDouble metered, OptionalDouble entitlement) {

    /** What counts (m³): what the meter shows where it does, otherwise what the run takes. */
    OptionalDouble counted() {
        return metered.isPresent() ? metered : taken;
    }

    /** Whether what counts is that of the whole year. */
    boolean countsWholeYear() {
        return metered.isPresent() || (taken.isPresent() && wholeYear);
    }
}
