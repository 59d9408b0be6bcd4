package org.headfall.scenarios.monitoring;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What there is to watch for one limit at one place.
 *
 * @param limit name of the limit
 * @param station the place
 * @param stopped the bores that acting would stop, in words
 * @param crossedDay first day on which the limit is crossed if nobody acts (d since the start); absent if it is not, or if
 *     it cannot be judged
 * @param lastChance the last day on which acting still prevents that; absent if nothing has to be prevented, or if not
 *     even acting on the first day does
 * @param says the result, as a sentence
 */
public record Warning(
        String limit,
        String station,
        String stopped,
        OptionalDouble crossedDay,
        Optional<LastChance> lastChance,
        String says) {

    /**
     * The last day for acting and what the places show then.
     *
     * @param day the day (d since the start)
     * @param leadTime from then to the crossing that is prevented (d)
     * @param levels heads of all places but the bores that are stopped
     */
    public record LastChance(double day, double leadTime, List<WarningLevel> levels) {
        /** Copies the list. */
        public LastChance {
            levels = List.copyOf(levels);
        }
    }

    /**
     * Head at a place on the last day for acting: a reading below says that things go faster than computed.
     *
     * @param station name of the place
     * @param head head then (m above datum)
     * @param lowest lowest head in the year before (m above datum)
     * @param highest highest head in the year before (m above datum)
     */
    public record WarningLevel(String station, double head, double lowest, double highest) {}
}
