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
 * @param crossing when the limit is crossed if nobody acts
 * @param lastChance the last day on which acting still prevents that; absent if nothing has to be prevented, or if not
 *     even acting on the first day does
 * @param says the result, as a sentence
 */
public record Warning(
        String limit, String station, String stopped, Crossing crossing, Optional<LastChance> lastChance, String says) {

    /**
     * When a limit is crossed if nobody acts, in days since the start.
     *
     * @param computed first day on which the computed value is beyond it; absent if it never is
     * @param earliest first day on which it may be beyond, the margin being smaller than the error; absent if it is never
     * @param latest first day on which it is beyond by more than the error; absent if it is never
     * @param error numerical error of the value, in the unit of the limit
     */
    public record Crossing(OptionalDouble computed, OptionalDouble earliest, OptionalDouble latest, double error) {
        /** Of a limit of which nothing is known. */
        static final Crossing NONE =
                new Crossing(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), 0);
    }

    /**
     * The last day for acting and what the places show then.
     *
     * @param day the day (d since the start)
     * @param leadTime from then to the earliest crossing that is prevented (d)
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
