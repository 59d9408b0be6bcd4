package org.headfall.scenarios.scenario;

import java.util.Optional;

/**
 * Recharge by rain on the outcrop.
 *
 * @param name its name in tables
 * @param rate depth of water over time, either steady and perhaps different from place to place, or changing
 * @param within where it falls; the whole grid if empty
 */
public record RechargeSpecification(String name, Rate rate, Optional<Area> within) {
    /** Depth of water over time. */
    public sealed interface Rate {}

    /**
     * Steady.
     *
     * @param rate depth over time (m/d)
     */
    public record SteadyRate(Field rate) implements Rate {}

    /**
     * Changing with time, the same at every place.
     *
     * @param rate depth over time (m/d)
     */
    public record ChangingRate(TimeCourse rate) implements Rate {}
}
