package org.headfall.scenarios.limits;

import java.util.OptionalDouble;

/** Turns the worst value of a limited quantity into an outcome. */
final class Judgement {

    private Judgement() {}

    /**
     * The outcome.
     *
     * @param limit the limit
     * @param endDay last day that was computed
     * @param first first day on which the value passes the limit, if it does
     * @param worst the worst value
     * @return crossed or kept by more than the numerical error, otherwise undecided
     */
    static Outcome of(Limit limit, double endDay, OptionalDouble first, Outcome.Worst worst) {
        if (Math.abs(worst.margin()) < worst.error()) {
            return new Outcome.Undecided("The margin is smaller than the numerical error.", first, worst);
        }
        if (first.isPresent()) {
            return new Outcome.Crossed(first.getAsDouble(), worst);
        }
        if (limit.period().toDay().orElse(endDay) > endDay) {
            return new Outcome.Undecided(
                    "It holds to the end of the run, but counts for longer than the run lasts.", first, worst);
        }
        return new Outcome.Holds(worst);
    }
}
