package org.headfall.scenarios.comparison;

import java.time.LocalDate;

/**
 * A station on a date in both runs.
 *
 * @param station name of the station
 * @param kind what it is, in words
 * @param holder who holds the bore; empty if nobody is named
 * @param date the date
 * @param firstHead head in the first run (m above datum)
 * @param secondHead head in the second run (m above datum)
 * @param firstFlow discharge in the first run (m³/d), NaN at points
 * @param secondFlow discharge in the second run (m³/d), NaN at points
 * @param error numerical error that both runs may add to the difference of heads (m), NaN if it is not known
 */
public record StationDifference(
        String station,
        String kind,
        String holder,
        LocalDate date,
        double firstHead,
        double secondHead,
        double firstFlow,
        double secondFlow,
        double error) {

    /** How much lower head is in the second run (m), negative where it is higher. */
    public double lowerBy() {
        return firstHead - secondHead;
    }
}
