package org.headfall.scenarios.allocation;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.BitSet;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.headfall.solver.allocation.Programme;
import org.headfall.solver.bore.WellLoss;
import org.headfall.solver.response.ResponseTable;
import org.headfall.solver.response.UnitResponses;
import org.junit.jupiter.api.Test;

/**
 * By hand: two bores in one block of time, of which the senior lowers a level by 0.02 m per m³/d and the junior by 0.01, with 5 m
 * left; of another level, which the senior alone lowers by 0.01, 10 m are left. So {@code 2 x1 + x2 <= 500} and {@code x1 <= 1000}.
 */
class ServedInTurnTest {

    private static final double DAYS = 365;
    private static final double ROUNDING = 1e-3;
    private final double[] relaxed = new double[2];
    private final List<Requirement> requirements = List.of(level(0, 5), level(1, 10));

    private static Requirement level(int station, double left) {
        BitSet both = new BitSet();
        both.set(0, 2);
        Requirement level = new Requirement(
                new Requirement.OfLevel("level " + station, station, 0, new WellLoss(0, 0)),
                station,
                new DrawdownByRates.Counted(both, Optional.empty()),
                new double[] {DAYS - 0.5});
        level.setBase(0, left);
        return level;
    }

    private ServedInTurn nobodyServed() {
        double[] curves = {0.02, 0.01, 0.01, 0};
        UnitResponses responses = new UnitResponses(
                new ResponseTable(2, new double[] {1, 1000}, curves, new double[][] {curves, curves}, new double[2][4]),
                Optional.empty());
        RateBlocks blocks = new RateBlocks(List.of(new RateBlocks.Block(0, DAYS, 0)), Collections.nCopies(1, 0));
        RateVariables variables = new RateVariables(blocks, new int[] {0, 1});
        SharedWater water = new SharedWater(
                new RateEffects(variables, new AquiferDrawdown(responses, variables)),
                RateStretches.of(blocks, 2),
                requirements);
        return new ServedInTurn(water, List.of());
    }

    private static Programme largest(double most, double... cost) {
        return Programme.linear(new double[] {most, most}, cost);
    }

    /** The senior takes all, 250: a metre more is 50 more for the senior and none for the junior, who alone would make 100 of it. */
    @Test
    void priceOfALimitThatTheSeniorUsesUp() {
        ServedInTurn served = nobodyServed();
        served.serve(
                "senior", largest(10_000, -1, 0), value -> Wish.of("", new double[] {-1, 0}, value, "", 1), relaxed);
        SharedWater.Best best = served.last("goal", largest(10_000, -1, -1), relaxed);
        assertArrayEquals(new double[] {250, 0}, best.rates(), ROUNDING);
        assertArrayEquals(new double[] {50, 0}, served.prices(), ROUNDING);
    }

    /** The senior takes what a pump lifts, 100, and leaves 300: what is more of the limit is the junior's. */
    @Test
    void priceOfALimitThatTheSeniorLeaves() {
        ServedInTurn served = nobodyServed();
        served.serve("senior", largest(100, -1, 0), value -> Wish.of("", new double[] {-1, 0}, value, "", 1), relaxed);
        SharedWater.Best best =
                served.last("goal", Programme.linear(new double[] {100, 10_000}, new double[] {-1, -1}), relaxed);
        assertArrayEquals(new double[] {100, 300}, best.rates(), ROUNDING);
        assertArrayEquals(new double[] {100, 0}, served.prices(), ROUNDING);
    }

    /** With 1.5 m left to the senior alone it takes 150 and leaves 200; a metre more for it is 100, and 200 less for the junior. */
    @Test
    void moreForTheSeniorMayBeLessForAll() {
        requirements.get(1).setBase(0, 1.5);
        ServedInTurn served = nobodyServed();
        served.serve(
                "senior", largest(10_000, -1, 0), value -> Wish.of("", new double[] {-1, 0}, value, "", 1), relaxed);
        SharedWater.Best best = served.last("goal", largest(10_000, -1, -1), relaxed);
        assertArrayEquals(new double[] {150, 200}, best.rates(), ROUNDING);
        assertArrayEquals(new double[] {100, -100}, served.prices(), ROUNDING);
    }

    /** Three turns: the senior's 150, then the junior's, then both, which can add nothing. */
    @Test
    void pricesGoThroughAllTurns() {
        requirements.get(1).setBase(0, 1.5);
        ServedInTurn served = nobodyServed();
        served.serve(
                "senior", largest(10_000, -1, 0), value -> Wish.of("", new double[] {-1, 0}, value, "", 1), relaxed);
        served.serve(
                "junior", largest(10_000, 0, -1), value -> Wish.of("", new double[] {0, -1}, value, "", 1), relaxed);
        SharedWater.Best best = served.last("goal", largest(10_000, -2, -1), relaxed);
        assertEquals(-500, best.value(), 5e-3);
        // 2 x1 + x2: a metre more of the first limit is 100 for the junior; one of the second 2 x 100 less 200.
        assertArrayEquals(new double[] {100, 0}, served.prices(), 0.1);
    }
}
