package org.headfall.scenarios.allocation;

import java.time.MonthDay;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.headfall.scenarios.limits.UncountedLimit;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.SmallField;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.scenario.AllocationSpecification;
import org.headfall.scenarios.scenario.AllocationSpecification.Goal;
import org.headfall.scenarios.scenario.Season;
import org.headfall.scenarios.scenario.StatedRate;

/**
 * A made-up allocation of two bores in two seasons of ten years from 1 July 2027 on. One bore rests; the other, whose name tries to
 * run a script, takes 2 L/s from October to March and 1 L/s in the rest of the year.
 */
final class InventedAllocation {

    static final String EVIL = "</script><img src=x onerror=\"window.hacked=1\">";
    static final String SPRING = "Lignum Spring";
    static final double LITRE_PER_SECOND = 86.4;

    private InventedAllocation() {}

    static AllocationResult result(boolean contradicts) {
        return result(
                contradicts,
                new AllocationResult.Rounds(
                        2, 1, true, List.of(), List.of(new AllocationResult.Difference("m", 0.0007))));
    }

    static AllocationResult result(boolean contradicts, AllocationResult.Rounds rounds) {
        RunDescription run = SmallField.description(List.of(
                SmallField.bore(EVIL, 500_160, 6_900_250, OptionalDouble.empty(), OptionalDouble.of(40), true),
                SmallField.bore("Rest, \"2\"", 500_300, 6_900_100, OptionalDouble.empty(), OptionalDouble.of(40), true),
                SmallField.bore(
                        "Old & deep", 500_360, 6_900_300, OptionalDouble.of(101), OptionalDouble.empty(), false),
                new Station.SpringSite(SPRING, 500_040, 6_900_500, 99, 98, 25),
                new Station.ProtectedPoint("Fence corner", 500_500, 6_900_400, 100, OptionalDouble.empty())));
        AllocationSpecification asked = new AllocationSpecification(
                Goal.LARGEST_YIELD,
                List.of(EVIL, "Rest, \"2\""),
                2 * LITRE_PER_SECOND,
                run.endDay(),
                Optional.empty(),
                List.of(
                        new Season(MonthDay.of(10, 1), MonthDay.of(3, 31)),
                        new Season(MonthDay.of(4, 1), MonthDay.of(9, 30))),
                0,
                List.of(new AllocationSpecification.HolderMinimum(
                        "Shire", new StatedRate(LITRE_PER_SECOND / 2, "L/s", 1 / LITRE_PER_SECOND))),
                List.of(),
                15,
                0.6);
        RateBlocks blocks = RateBlocks.of(asked, run.calendar());
        List<AllocationResult.BoreRates> bores = List.of(
                new AllocationResult.BoreRates(
                        EVIL, List.of(2 * LITRE_PER_SECOND, LITRE_PER_SECOND), 1.5 * LITRE_PER_SECOND),
                new AllocationResult.BoreRates("Rest, \"2\"", List.of(0.0, 0.0), 0));
        return new AllocationResult(
                run,
                asked,
                blocks,
                bores,
                List.of(),
                1.5 * LITRE_PER_SECOND,
                20,
                kept(contradicts),
                contradicts
                        ? List.of(new AllocationResult.Relaxed("spring <keeps> (" + SPRING + ")", "m", 0.25, 3, 3.25))
                        : List.of(),
                List.of(
                        new AllocationResult.Exchange(SPRING, EVIL, "Rest, \"2\"", 1.25),
                        new AllocationResult.Exchange(SPRING, "Rest, \"2\"", EVIL, 0.8)),
                "ML/yr",
                List.of(new UncountedLimit(
                        "deep <b>map</b> (every cell)", "is judged on the map", "holds, worst 1.00 m")),
                rounds);
    }

    private static List<AllocationResult.Kept> kept(boolean contradicts) {
        return List.of(
                new AllocationResult.Kept(
                        "spring <keeps> (" + SPRING + ")",
                        true,
                        contradicts,
                        List.of(SPRING),
                        "m",
                        "m",
                        365,
                        0.00151,
                        0.00249,
                        0.0015,
                        286.39291,
                        28.63929,
                        ""),
                new AllocationResult.Kept(
                        "fence (Fence corner)",
                        true,
                        false,
                        List.of("Fence corner"),
                        "m",
                        "m",
                        365,
                        6.06494,
                        -6.0659,
                        0.0015,
                        0,
                        0,
                        ""),
                new AllocationResult.Kept(
                        "what the bore can bring up (Rest, \"2\")",
                        false,
                        false,
                        List.of("Rest, \"2\""),
                        "m",
                        "m",
                        Double.NaN,
                        Double.NaN,
                        Double.NaN,
                        0,
                        0,
                        0,
                        "gives no water at all"));
    }
}
