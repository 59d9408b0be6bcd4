package org.headfall.scenarios.report.content;

import java.time.LocalDate;
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
 * @param reachedOn date of the worst value
 * @param unit unit of both values
 * @param error estimated numerical error of the reached value, in {@code unit}, or NaN
 * @param margin how far on the safe side (positive) or beyond the limit (negative), in {@code unit}
 * @param crossedOn first date beyond the limit, null if it holds
 */
public record LimitOutcome(
        String name,
        String clause,
        String site,
        String quantity,
        String conditions,
        double allowed,
        double reached,
        LocalDate reachedOn,
        String unit,
        double error,
        double margin,
        @Nullable LocalDate crossedOn) {

    /** Whether the limit holds. */
    public boolean holds() {
        return crossedOn == null;
    }

    /** Whether the margin is smaller than the error of the reached value. */
    public boolean withinError() {
        return Math.abs(margin) <= error;
    }
}
