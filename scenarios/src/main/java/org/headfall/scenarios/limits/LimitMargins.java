package org.headfall.scenarios.limits;

/**
 * How far a run stays from a limit, on the days on which the limit counts.
 *
 * <p>Where the limited value does not follow head in proportion, the change per metre is no positive number:
 *
 * <ul>
 *   <li>NaN on all days, of kinds of values that never follow it, flows of bores and volumes, and of a share of available head
 *       above a level that the station does not have.
 *   <li>0 on days on which a share of the discharge of a spring is taken of a spring that does not flow: it is all of it,
 *       whatever head does. The discharge itself changes here by what it does while the spring flows, on all days.
 *   <li>Infinite on days on which what a share of available head is taken of is at the level from which it is counted, and
 *       negative where it is below. A limit that counts such a day cannot be evaluated.
 * </ul>
 *
 * @param days days since the start, increasing; none if the run ends before
 * @param margins distance to the allowed value, in the unit of the limit, negative beyond it
 * @param perMetre by how much each margin shrinks per metre of drawdown at the place, in the unit of the limit, see {@link
 *     HeadProportion}; of a rate of decline per metre that head falls more in its time of one year; no
 *     positive number where the limited value does not follow head in proportion, see above
 * @param error numerical error of the value, in the same unit: a limit holds where more than that is left
 */
@SuppressWarnings("ArrayRecordComponent") // a series inside one evaluation, never compared
public record LimitMargins(double[] days, double[] margins, double[] perMetre, double error) {}
