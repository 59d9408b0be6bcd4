package org.headfall.scenarios.limits;

/**
 * A limit and its outcome.
 *
 * @param limit the limit
 * @param outcome the outcome
 */
public record LimitResult(Limit limit, Outcome outcome) {}
