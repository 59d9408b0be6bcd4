package org.headfall.cli.answer;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import org.headfall.scenarios.limits.LimitResult;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.recording.RunCalendar;

/**
 * A limit at one place.
 *
 * @param name name of the limit
 * @param station bore, spring or protected point
 * @param outcome holds, crossed, undecided or not evaluated
 * @param allowed the allowed value
 * @param worst the value nearest to the limit or farthest beyond it, if there is one
 * @param unit unit of both values
 * @param worstOn its date
 * @param crossedOn first date beyond the limit, if it is crossed
 * @param reason why nothing sure can be said; empty if something can
 */
public record LimitAnswer(
        String name,
        String station,
        String outcome,
        double allowed,
        OptionalDouble worst,
        String unit,
        Optional<LocalDate> worstOn,
        Optional<LocalDate> crossedOn,
        String reason) {

    static LimitAnswer of(LimitResult result, RunCalendar calendar) {
        Outcome outcome = result.outcome();
        Optional<Outcome.Worst> worst = worst(outcome);
        return new LimitAnswer(
                result.limit().name(),
                result.limit().station(),
                outcome.words(),
                result.limit().quantity().allowed(),
                worst.map(value -> OptionalDouble.of(value.value())).orElse(OptionalDouble.empty()),
                result.limit().quantity().unit(),
                worst.map(value -> calendar.at(value.day()).toLocalDate()),
                outcome instanceof Outcome.Crossed crossed
                        ? Optional.of(calendar.at(crossed.firstDay()).toLocalDate())
                        : Optional.empty(),
                reason(outcome));
    }

    private static Optional<Outcome.Worst> worst(Outcome outcome) {
        if (outcome instanceof Outcome.Holds holds) {
            return Optional.of(holds.worst());
        }
        if (outcome instanceof Outcome.Crossed crossed) {
            return Optional.of(crossed.worst());
        }
        return outcome instanceof Outcome.Undecided undecided ? Optional.of(undecided.worst()) : Optional.empty();
    }

    private static String reason(Outcome outcome) {
        if (outcome instanceof Outcome.NotEvaluated missing) {
            return missing.reason();
        }
        return outcome instanceof Outcome.Undecided undecided ? undecided.reason() : "";
    }

    boolean holds() {
        return outcome.equals("holds");
    }

    boolean crossed() {
        return outcome.equals("crossed");
    }
}
