package org.headfall.scenarios.scenario;

import java.util.List;
import org.headfall.scenarios.problem.Place;

/**
 * Something that must not happen, in the seven parts that limits in law have.
 *
 * @param name what the limit is called
 * @param quantity what is limited, with its bound
 * @param at names of the bores, springs and protected points it holds for
 * @param cause whose taking counts, and so what heads are compared with
 * @param when when it has to hold
 * @param text the clause as the licence words it; empty if not given
 * @param place where the document gives it
 */
public record Limit(String name, Quantity quantity, List<String> at, Cause cause, When when, String text, Place place) {
    /** Copies the list. */
    public Limit {
        at = List.copyOf(at);
    }

    /** What is limited, with its bound. */
    public sealed interface Quantity {}

    /**
     * Head of what is compared with less head of the run.
     *
     * @param atMost bound (m)
     */
    public record Drawdown(double atMost) implements Quantity {}

    /**
     * Head; of a bore, that of the aquifer at its wall.
     *
     * @param atLeast bound (m above datum)
     */
    public record FloorLevel(double atLeast) implements Quantity {}

    /**
     * Fall of head over time, as a mean over one year.
     *
     * @param atMost bound (m/d)
     */
    public record DeclineRate(double atMost) implements Quantity {}

    /** Whose taking counts. */
    public sealed interface Cause {}

    /** Whatever changes after the start of the run: its heads are compared with those at the start. */
    public record EverythingSinceStart() implements Cause {}

    /** The taking of every bore after the start: the run is compared with one without any bore. */
    public record Everyone() implements Cause {}

    /** The taking of the proposed bores: the run is compared with one without them. */
    public record ProposedBores() implements Cause {}

    /**
     * The taking of one holder's bores: the run is compared with one without them.
     *
     * @param name the holder
     */
    public record Holder(String name) implements Cause {}

    /**
     * Part of the period.
     *
     * @param fromDay first day (d since the start of the period)
     * @param toDay last day; infinite for ever
     */
    public record When(double fromDay, double toDay) {
        /** At all times. */
        public static final When EVER = new When(0, Double.POSITIVE_INFINITY);
    }
}
