package org.headfall.scenarios.limits;

/**
 * How far a run stays from a limit, on the days on which the limit counts.
 *
 * @param days days since the start, increasing; none if the run ends before
 * @param margins distance to the allowed value, in the unit of the limit, negative beyond it
 * @param perMetre by how much each margin shrinks per metre of drawdown at the place, in the unit of the limit, see {@link
 *     HeadProportion}; of a rate of decline per metre that head falls more in its time of one year; NaN where the limited
 *     value does not follow head in proportion
 * @param error numerical error of the value, in the same unit: a limit holds where more than that is left
 */
@SuppressWarnings("ArrayRecordComponent") // a series inside one evaluation, never compared
public record LimitMargins(double[] days, double[] margins, double[] perMetre, double error) {}
