package org.headfall.scenarios.limits;

import java.util.List;
import java.util.OptionalDouble;

/**
 * A limit and its outcome.
 *
 * @param limit the limit
 * @param outcome the outcome
 * @param shares what each cause has of what {@link CauseSplit} says of the worst value; none where that is not split
 */
public record LimitResult(Limit limit, Outcome outcome, List<CauseShare> shares) {

    /** Copies the list. */
    public LimitResult {
        shares = List.copyOf(shares);
    }

    /**
     * Margin of the worst value over {@link LimitedQuantity#scaleOfMargin()}: the smaller, the closer is the limit, also
     * beside limits of other quantities. Absent if there are no values.
     */
    public OptionalDouble relativeMargin() {
        return outcome.worstIfAny().stream()
                .mapToDouble(worst -> worst.margin() / limit.quantity().scaleOfMargin())
                .findFirst();
    }

    /**
     * A limit and its outcome, without shares.
     *
     * @param limit the limit
     * @param outcome the outcome
     */
    public LimitResult(Limit limit, Outcome outcome) {
        this(limit, outcome, List.of());
    }
}
