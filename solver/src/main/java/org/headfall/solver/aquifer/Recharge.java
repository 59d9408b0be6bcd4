package org.headfall.solver.aquifer;

import org.headfall.solver.schedule.Schedule;

/**
 * Water that enters the aquifer from rain on its outcrop.
 *
 * @param name name in the water balance
 * @param rate recharge of each cell (m/d), zero off the outcrop; not copied, must not change
 * @param factor multiplies the rate, changing with time; 1 for constant recharge
 */
@SuppressWarnings("ArrayRecordComponent") // a field of 10⁵ cells, shared and never compared
public record Recharge(String name, double[] rate, Schedule factor) {}
