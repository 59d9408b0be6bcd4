package org.headfall.scenarios.limits;

import java.util.List;

/**
 * A limit and its outcome.
 *
 * @param limit the limit
 * @param outcome the outcome
 * @param shares drawdown by each cause at the place on the day of the worst value, where it is known
 */
public record LimitResult(Limit limit, Outcome outcome, List<CauseShare> shares) {

    /** Copies the list. */
    public LimitResult {
        shares = List.copyOf(shares);
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
