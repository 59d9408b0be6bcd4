package org.headfall.scenarios.limits;

import java.util.Locale;
import java.util.OptionalDouble;

/**
 * A limit at one place, as the user wrote it.
 *
 * @param name its name
 * @param quantity what is limited, and the value
 * @param place where it holds
 * @param comparison with what it is compared, and so whose taking counts
 * @param period when it counts
 * @param howSure probability with which it has to hold; absent for the best estimate. A single run gives a best
 *     estimate only
 * @param text the clause as the licence words it, empty if not given
 */
public record Limit(
        String name,
        LimitedQuantity quantity,
        LimitPlace place,
        Comparison comparison,
        LimitPeriod period,
        OptionalDouble howSure,
        String text) {

    private static final double PER_CENT = 100;

    /**
     * A limit at one station, by best estimate.
     *
     * @param name its name
     * @param quantity what is limited, and the value
     * @param station name of the bore, spring or protected point
     * @param comparison with what it is compared
     * @param period when it counts
     * @param text the clause as the licence words it, empty if not given
     */
    public Limit(
            String name,
            LimitedQuantity quantity,
            String station,
            Comparison comparison,
            LimitPeriod period,
            String text) {
        this(name, quantity, new LimitPlace.AtStation(station), comparison, period, OptionalDouble.empty(), text);
    }

    /** The place in words: of most limits the name of a bore, spring or protected point. */
    public String station() {
        return place.words();
    }

    /** Its name, and its place in brackets. */
    public String nameAndPlace() {
        return name + " (" + station() + ")";
    }

    /** Whether judging it takes another run, beside the run itself. */
    public boolean needsOtherRun() {
        return quantity.measuresAnEffect() && comparison.takesAnotherRun();
    }

    /** Whose taking counts, what it is compared with, when it has to hold and how surely, in words. */
    public String conditions() {
        if (quantity instanceof LimitedQuantity.Distance) {
            return "from " + comparison.cause();
        }
        String effect = quantity.measuresAnEffect() && !(comparison instanceof Comparison.Nothing)
                ? "caused by " + comparison.cause() + ", compared with " + comparison.words() + ", "
                : "";
        return effect + period.words() + sureness();
    }

    private String sureness() {
        return howSure.isPresent()
                ? String.format(
                        Locale.ROOT,
                        ", to hold with a probability of %.0f %% (a single run gives a best estimate)",
                        PER_CENT * howSure.getAsDouble())
                : "";
    }
}
