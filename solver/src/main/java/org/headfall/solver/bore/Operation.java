package org.headfall.solver.bore;

import java.util.OptionalDouble;
import org.headfall.solver.schedule.Schedule;

/** How a bore is operated: what pump or valve do. */
public sealed interface Operation {

    /** Nothing is taken. */
    record Off() implements Operation {}

    /**
     * Pumped at a scheduled rate. Where a lowest water level is given the rate is cut so that the level in the bore
     * does not fall below it.
     *
     * @param rate discharge (m³/d), negative for injection
     * @param lowestLevel lowest allowed water level in the bore (m above datum), if any
     */
    record PumpedRate(Schedule rate, OptionalDouble lowestLevel) implements Operation {}

    /**
     * Flows by itself while the head at the bore stands above the outlet; never takes water in.
     *
     * @param outletLevel outlet level (m above datum)
     */
    record FreeFlow(double outletLevel) implements Operation {}
}
