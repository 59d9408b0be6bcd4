package org.headfall.scenarios.report;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.headfall.scenarios.limits.LimitResult;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.report.content.LimitOutcome;
import org.headfall.scenarios.spatial.Position;
import org.jspecify.annotations.Nullable;

/**
 * What became of limits, as a report shows it.
 *
 * @param dates dates of the run
 */
record LimitOutcomes(RunDates dates) {

    List<LimitOutcome> of(List<LimitResult> results) {
        return results.stream().map(this::limit).toList();
    }

    private LimitOutcome limit(LimitResult result) {
        Outcome outcome = result.outcome();
        if (outcome instanceof Outcome.Holds holds) {
            return limit(
                    result,
                    Outcome.Kind.HOLDS,
                    holds.worst(),
                    null,
                    holds.worst().note());
        }
        if (outcome instanceof Outcome.Crossed crossed) {
            return limit(
                    result,
                    Outcome.Kind.CROSSED,
                    crossed.worst(),
                    dates.on(crossed.firstDay()),
                    crossed.worst().note());
        }
        if (outcome instanceof Outcome.Undecided undecided) {
            LocalDate first = dates.on(undecided.firstDay());
            return limit(result, Outcome.Kind.UNDECIDED, undecided.worst(), first, undecided.reason());
        }
        String reason = outcome instanceof Outcome.NotEvaluated missing ? missing.reason() : outcome.words();
        return limit(result, Outcome.Kind.NOT_EVALUATED, null, null, reason);
    }

    private LimitOutcome limit(
            LimitResult result,
            Outcome.Kind verdict,
            Outcome.@Nullable Worst worst,
            @Nullable LocalDate crossedOn,
            String remark) {
        var limit = result.limit();
        Optional<Position> spot = worst == null ? Optional.empty() : worst.spot();
        boolean dated = limit.quantity().changesOverTime();
        return new LimitOutcome(
                limit.name(),
                limit.text(),
                limit.station(),
                limit.quantity().words(),
                limit.conditions(),
                limit.quantity().allowed(),
                worst == null ? Double.NaN : worst.value(),
                worst == null || !dated ? null : dates.on(worst.day()),
                limit.quantity().unit(),
                worst == null ? Double.NaN : worst.error(),
                worst == null ? Double.NaN : worst.margin(),
                result.relativeMargin().orElse(Double.NaN),
                verdict,
                dated ? crossedOn : null,
                remark,
                spot.map(Position::x).orElse(Double.NaN),
                spot.map(Position::y).orElse(Double.NaN));
    }
}
