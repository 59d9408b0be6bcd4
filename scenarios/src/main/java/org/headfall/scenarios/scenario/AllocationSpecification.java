package org.headfall.scenarios.scenario;

import java.util.List;
import java.util.Optional;

/**
 * How bores are to share the water.
 *
 * @param goal what is wanted
 * @param bores names of the bores whose rates are looked for, at least one
 * @param largestRate most that one bore may take (m3/d)
 * @param days how long the bores take from the start on (d)
 * @param total wanted mean taking of all of them (m3/d), if given
 * @param seasons parts of every year with rates of their own; the whole year if empty
 * @param yearsAlike after how many years rates may change; 0 if they never do
 * @param minimums least mean taking of holders
 * @param seniority holders whose yields come first, in this order
 * @param deliveryHead head above the ground that water is lifted to (m)
 * @param efficiency part of the energy that lifts water (-), from more than 0 to 1
 */
public record AllocationSpecification(
        Goal goal,
        List<String> bores,
        double largestRate,
        double days,
        Optional<StatedRate> total,
        List<Season> seasons,
        int yearsAlike,
        List<HolderMinimum> minimums,
        List<String> seniority,
        double deliveryHead,
        double efficiency) {

    /** Copies the lists. */
    public AllocationSpecification {
        bores = List.copyOf(bores);
        seasons = List.copyOf(seasons);
        minimums = List.copyOf(minimums);
        seniority = List.copyOf(seniority);
    }

    /** What is wanted. */
    public enum Goal {
        /** As much water as all limits allow. */
        LARGEST_YIELD,
        /** The wanted total with the least energy. */
        LEAST_ENERGY,
        /** The wanted total with the least mean drawdown at the springs. */
        LEAST_EFFECT_ON_SPRINGS
    }

    /**
     * Least taking of a holder, in every season and year.
     *
     * @param holder the holder
     * @param rate the least rate of all its bores together
     */
    public record HolderMinimum(String holder, StatedRate rate) {}
}
