package org.headfall.cli.answer;

import java.time.LocalDate;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.Map;
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
 * @param margin how far it is on the safe side, negative beyond the limit
 * @param relativeMargin the margin by a measure that makes those of different quantities comparable
 * @param unit unit of allowed, worst and margin
 * @param worstOn its date, unless the value never changes
 * @param crossedOn first date beyond the limit, if it is crossed and the value changes
 * @param note where the worst value is and what else there is to say of it; may be empty
 * @param drawdownByCause what each cause does to head there on that day (m), where that is known
 * @param reason why nothing sure can be said; empty if something can
 */
public record LimitAnswer(
        String name,
        String station,
        Outcome.Kind outcome,
        double allowed,
        OptionalDouble worst,
        OptionalDouble margin,
        OptionalDouble relativeMargin,
        String unit,
        Optional<LocalDate> worstOn,
        Optional<LocalDate> crossedOn,
        String note,
        Map<String, Double> drawdownByCause,
        String reason) {

    /**
     * Crossed limits first, then undecided ones, then those that were not judged, each with the one farthest beyond its limit,
     * or nearest to it, first.
     */
    static final Comparator<LimitAnswer> WORST_FIRST = Comparator.comparingInt(LimitAnswer::rank)
            .thenComparingDouble(limit -> limit.relativeMargin().orElse(Double.POSITIVE_INFINITY));

    static LimitAnswer of(LimitResult result, RunCalendar calendar) {
        Outcome outcome = result.outcome();
        Optional<Outcome.Worst> worst = outcome.worstIfAny();
        boolean dated = result.limit().quantity().changesOverTime();
        return new LimitAnswer(
                result.limit().name(),
                result.limit().station(),
                outcome.kind(),
                result.limit().quantity().allowed(),
                worst.map(value -> OptionalDouble.of(value.value())).orElse(OptionalDouble.empty()),
                worst.map(value -> OptionalDouble.of(value.margin())).orElse(OptionalDouble.empty()),
                result.relativeMargin(),
                result.limit().quantity().unit(),
                worst.filter(value -> dated)
                        .map(value -> calendar.at(value.day()).toLocalDate()),
                dated && outcome instanceof Outcome.Crossed crossed
                        ? Optional.of(calendar.at(crossed.firstDay()).toLocalDate())
                        : Optional.empty(),
                worst.map(Outcome.Worst::note).orElse(""),
                byCause(result),
                reason(outcome));
    }

    private static Map<String, Double> byCause(LimitResult result) {
        Map<String, Double> shares = new LinkedHashMap<>();
        result.shares().forEach(share -> shares.merge(share.cause(), share.drawdown(), Double::sum));
        return Collections.unmodifiableMap(shares);
    }

    private static String reason(Outcome outcome) {
        if (outcome instanceof Outcome.NotEvaluated missing) {
            return missing.reason();
        }
        return outcome instanceof Outcome.Undecided undecided ? undecided.reason() : "";
    }

    private int rank() {
        return switch (outcome) {
            case CROSSED -> 0;
            case UNDECIDED -> 1;
            case NOT_EVALUATED -> 2;
            case HOLDS -> 3;
        };
    }

    boolean holds() {
        return outcome == Outcome.Kind.HOLDS;
    }

    boolean crossed() {
        return outcome == Outcome.Kind.CROSSED;
    }
}
