package org.headfall.scenarios.comparison;

import java.time.LocalDate;

/**
 * A bore, spring or point whose head is lower in the second run by a threshold or more. Proposed bores that
 * take more in the second run are the cause, and none of these.
 *
 * @param threshold the threshold (m)
 * @param date the date
 * @param holder who holds the bore; empty if nobody is named
 * @param station name of the station
 * @param kind what it is, in words
 * @param presentHead head at the start of the second run (m above datum)
 * @param lowerBy how much lower head is in the second run on that date (m)
 * @param error numerical error that both runs may add to that (m), NaN if it is not known
 * @param meaning what that means for whoever uses it, in words
 */
public record AffectedPlace(
        double threshold,
        LocalDate date,
        String holder,
        String station,
        String kind,
        double presentHead,
        double lowerBy,
        double error,
        String meaning) {}
