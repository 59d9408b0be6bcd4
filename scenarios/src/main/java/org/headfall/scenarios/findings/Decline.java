package org.headfall.scenarios.findings;

import java.util.OptionalDouble;

/**
 * How a station declines up to a date, and how long its head lasts if that goes on.
 *
 * @param station name of the station
 * @param kind what it is, in words
 * @param label words for the date
 * @param day the date (d since the start)
 * @param head head then (m above datum)
 * @param slope mean fall of head over the last five years between the same days of the year (m/yr), so that the season
 *     leaves no trace; absent before five years
 * @param availableLeft head above the aquifer top then, as a share of that at the start; absent if there was none
 * @param aquiferTop when head reaches the top of the aquifer
 * @param outlet when head reaches the outlet; absent if it has none
 * @param intake when the level in the bore reaches the pump intake; absent if it has none
 */
public record Decline(
        String station,
        String kind,
        String label,
        double day,
        double head,
        OptionalDouble slope,
        OptionalDouble availableLeft,
        Reached aquiferTop,
        Reached outlet,
        Reached intake) {

    /** Whether years are left to a level, and if not, why. */
    public enum Left {
        /** So many years are left. */
        YEARS,
        /** There is no such level. */
        NO_LEVEL,
        /** It lies above already. */
        PASSED,
        /** The run has not lasted long enough for a slope. */
        SLOPE_UNKNOWN,
        /** Nothing falls towards it. */
        NOT_FALLING,
        /** That would take more than {@link Reached#LONGEST_YEARS}. */
        LATER
    }

    /**
     * When a level is reached.
     *
     * @param level the level (m above datum); absent if there is none
     * @param reachedDay first day of the run below it (d since the start); absent if the run stays above it
     * @param yearsLeft years from the date until it is reached if the slope goes on; absent unless {@code left} is
     *     {@link Left#YEARS}
     * @param left why they are absent, if they are
     */
    public record Reached(OptionalDouble level, OptionalDouble reachedDay, OptionalDouble yearsLeft, Left left) {

        /** A decline so slow that it would take longer is none: it would only be the error of the numbers (yr). */
        public static final int LONGEST_YEARS = 1000;

        static final Reached NO_LEVEL =
                new Reached(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), Left.NO_LEVEL);
    }
}
