package org.headfall.scenarios.report.content;

import java.time.LocalDate;
import org.headfall.scenarios.limits.Outcome;
import org.jspecify.annotations.Nullable;

/**
 * What became of a limit.
 *
 * @param name name of the limit
 * @param clause text of the clause as the user gave it, blank if none
 * @param site name of the site it is held at, or other place in words
 * @param quantity what is limited, in words: "drawdown"
 * @param conditions cause, comparison and time in words: "by proposed bores, compared with without them, ever"
 * @param allowed value allowed, in {@code unit}
 * @param reached worst value reached, in {@code unit}
 * @param reachedOn date of the worst value, null if there is none or the value never changes
 * @param unit unit of both values
 * @param error estimated numerical error of the reached value, in {@code unit}, or NaN
 * @param margin how far on the safe side (positive) or beyond the limit (negative), in {@code unit}
 * @param relativeMargin the margin by a measure that makes those of different quantities comparable
 * @param verdict whether it holds
 * @param crossedOn first date beyond the limit, null if it is never passed or the value never changes
 * @param remark why it is undecided or was not evaluated, otherwise blank
 * @param x easting of the worst cell of a limit on the map (m), otherwise NaN
 * @param y northing of it (m), otherwise NaN
 */
public record LimitOutcome(
        String name,
        String clause,
        String site,
        String quantity,
        String conditions,
        double allowed,
        double reached,
        @Nullable LocalDate reachedOn,
        String unit,
        double error,
        double margin,
        double relativeMargin,
        Outcome.Kind verdict,
        @Nullable LocalDate crossedOn,
        String remark,
        double x,
        double y) {}
