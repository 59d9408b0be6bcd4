package org.headfall.scenarios.limits;

/**
 * How far a run stays from a limit, on the days on which the limit counts.
 *
 * @param days days since the start, increasing; none if the run ends before
 * @param margins distance to the allowed value, in the unit of the limit, negative beyond it
 */
@SuppressWarnings("ArrayRecordComponent") // a series inside one evaluation, never compared
public record LimitMargins(double[] days, double[] margins) {}
