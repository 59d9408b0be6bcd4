package org.headfall.scenarios.allocation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitPeriod;
import org.headfall.scenarios.limits.LimitedQuantity;
import org.headfall.solver.allocation.Programme;
import org.headfall.solver.allocation.UnsolvedException;
import org.headfall.solver.bore.WaterColumn;
import org.headfall.solver.bore.WellLoss;
import org.headfall.solver.response.CoupledResponses;
import org.headfall.solver.response.ResponseTable;
import org.headfall.solver.response.UnitResponses;
import org.junit.jupiter.api.Test;

/**
 * By hand: two bores that do nothing to each other, whose own drawdown is a hundredth of their rate at once, in 40 years of
 * their own. So what is left in a year over that hundredth is the best rate of that year.
 */
class SharedWaterTest {

    private static final int YEARS = 40;
    private static final double RESPONSE = 0.01;
    private static final int SENIOR = 0;
    private static final int JUNIOR = 1;

    private static RateBlocks years() {
        List<RateBlocks.Block> blocks = new ArrayList<>();
        for (int year = 0; year < YEARS; year++) {
            blocks.add(new RateBlocks.Block(365.0 * year, 365.0 * (year + 1), year));
        }
        return new RateBlocks(blocks, Collections.nCopies(YEARS, 0));
    }

    private static Requirement level(int bore, IntToDoubleFunction left) {
        BitSet alone = new BitSet();
        alone.set(bore);
        double[] days = IntStream.range(0, YEARS)
                .mapToDouble(year -> 365.0 * (year + 1) - 0.5)
                .toArray();
        Requirement level = new Requirement(
                new Requirement.OfLevel("bore " + bore, bore, 0, new WellLoss(0, 0)),
                bore,
                new DrawdownByRates.Counted(alone, Optional.empty()),
                days);
        for (int year = 0; year < YEARS; year++) {
            level.setBase(year, left.applyAsDouble(year));
        }
        return level;
    }

    private static SharedWater water(List<Requirement> requirements) {
        return water(requirements, RESPONSE);
    }

    private static SharedWater water(List<Requirement> requirements, double ofJunior) {
        double[] curves = {RESPONSE, 0, 0, ofJunior};
        UnitResponses responses = new UnitResponses(
                new ResponseTable(
                        2,
                        new double[] {1, 1000, 20_000},
                        curves,
                        new double[][] {curves, curves, curves},
                        new double[3][4]),
                Optional.empty());
        RateVariables variables = new RateVariables(years(), new int[] {SENIOR, JUNIOR});
        return new SharedWater(
                new RateEffects(variables, new AquiferDrawdown(responses, variables)),
                RateStretches.of(years(), 2),
                requirements);
    }

    /** Mean rate of some bores (m³/d), to be large. */
    private static Programme largestYield(int... bores) {
        double[] most = new double[2 * YEARS];
        Arrays.fill(most, 20_000);
        double[] cost = new double[2 * YEARS];
        for (int bore : bores) {
            Arrays.fill(cost, bore * YEARS, (bore + 1) * YEARS, -1.0 / YEARS);
        }
        return Programme.linear(most, cost);
    }

    /** The first of two yields alike in all years; what is left for the other grows by a metre a year, 20.5 m on average. */
    @Test
    void theGoalIsMadeAsFineAsItNeedsWhateverServedTheSenior() {
        List<Requirement> requirements = List.of(level(SENIOR, year -> 5), level(JUNIOR, year -> year + 1));
        SharedWater water = water(requirements);
        double[] relaxed = new double[2];
        SharedWater.Best senior = water.solve("senior", largestYield(SENIOR), List.of(), relaxed);
        assertEquals(-500, senior.value(), 0.1);
        Programme goal = largestYield(SENIOR, JUNIOR);
        Wish kept = Wish.of("yield", largestYield(SENIOR).cost(), senior.value() * (1 - 1e-6), "ML/yr", 1);
        for (int round = 0; round < 2; round++) {
            SharedWater.Best best = water.solve("goal", goal, List.of(kept), relaxed);
            assertEquals(-2550, best.value(), 0.006 * 2550);
            assertTrue(Arrays.stream(relaxed).allMatch(amount -> amount == 0), Arrays.toString(relaxed));
        }
    }

    /** A rate wanted in one year is half a millimetre too much for the next: only rates that differ between both keep all. */
    @Test
    void whatIsCloseToKeepingAllIsMadeFinerUntilItDoes() {
        SharedWater water = water(List.of(level(SENIOR, year -> year == 39 ? 4.9995 : 5)));
        double[] wanted = new double[2 * YEARS];
        wanted[38] = -1;
        Wish minimum = Wish.of("year 38", wanted, -500, "m3/d", 1);
        double[] relaxed = new double[1];
        SharedWater.Best best = water.solve("goal", largestYield(SENIOR), List.of(minimum), relaxed);
        assertEquals(0, relaxed[0]);
        assertTrue(best.rates()[38] >= 500 - 1e-6, "year 38: " + best.rates()[38]);
        assertEquals(499.95, best.rates()[39], 0.011);
        assertEquals(-500, best.value(), 0.05);
    }

    /**
     * A limit on drawdown and one on pressure leave 3 m of head each, 300 m³/d, where 1000 are wanted. The 400 that lack take 4 m of the
     * one, or 3.6 m of the other, whose bore lowers it by 0.009: that is the less in head, though 35 kPa.
     */
    @Test
    void limitsGiveWayByHeadWhateverTheirUnit() {
        double column = column();
        Requirement drawdown = limit(SENIOR, new LimitedQuantity.Drawdown(3), 1, 3);
        Requirement pressure =
                limit(JUNIOR, new LimitedQuantity.Pressure(0, OptionalDouble.empty()), column, 2.7 * column);
        SharedWater water = water(List.of(drawdown, pressure), 0.9 * RESPONSE);
        double[] wanted = new double[2 * YEARS];
        wanted[0] = -1;
        wanted[YEARS] = -1;
        double[] relaxed = new double[2];
        water.solve("goal", largestYield(SENIOR), List.of(Wish.of("both", wanted, -1000, "m3/d", 1)), relaxed);
        assertEquals(0, relaxed[0], 1e-3);
        assertEquals(3.6 * column, relaxed[1], 1e-2);
    }

    /** A metre of water of 15 °C weighs 9.80 kPa (999.1 kg/m³, from memory of the tables of its density); a rate of decline acts for its years. */
    @Test
    void unitsAreWorthMetresOfHead() {
        assertEquals(1, limit(SENIOR, new LimitedQuantity.Drawdown(3), 1, 3).metresOfUnit());
        assertEquals(
                1 / 9.80,
                limit(SENIOR, new LimitedQuantity.Pressure(0, OptionalDouble.empty()), column(), 3)
                        .metresOfUnit(),
                5e-4);
        assertEquals(
                5, limit(SENIOR, new LimitedQuantity.DeclineRate(0.2, 5), 1, 3).metresOfUnit());
    }

    /** Pressure of a metre (kPa). */
    private static double column() {
        return WaterColumn.REFERENCE.gaugePressure(1, 0) - WaterColumn.REFERENCE.gaugePressure(0, 0);
    }

    private static Requirement limit(int bore, LimitedQuantity quantity, double perMetre, double left) {
        Requirement like = level(bore, year -> left);
        Requirement limit = new Requirement(
                new Requirement.OfLimit(
                        new Limit("limit " + bore, quantity, "place", new Comparison.Nothing(), LimitPeriod.EVER, "")),
                bore,
                like.counted(),
                like.days(),
                Arrays.stream(like.days()).map(day -> perMetre).toArray());
        limit.relax(left);
        return limit;
    }

    /** Water that lies a metre too low whatever the rates, though their units do nothing to it: no row tells, good rates stay. */
    @Test
    void roundsThatDoNotEndFindNoRates() {
        RateBlocks blocks = new RateBlocks(List.of(new RateBlocks.Block(0, 365, 0)), List.of(0));
        RateVariables variables = new RateVariables(blocks, new int[] {SENIOR});
        Requirement level = new Requirement(
                new Requirement.OfLevel("bore", 0, 0, new WellLoss(0, 0)), SENIOR, variables.everyone(), new double[] {
                    364.5
                });
        SharedWater water = new SharedWater(
                new RateEffects(variables, new LowWhateverTheRates()), RateStretches.of(blocks, 1), List.of(level));
        Programme goal = Programme.linear(new double[] {1000}, new double[] {-1});
        assertThrows(UnsolvedException.class, () -> water.solve("goal", goal, List.of(), new double[1]));
        assertEquals(Optional.empty(), water.solveLike("goal", goal, List.of()));
    }

    /** A metre of drawdown, of which no rate is the cause. */
    private static final class LowWhateverTheRates implements DrawdownByRates {
        @Override
        public CoupledResponses.Changes on(double[] rates, Counted counted, double[] days) {
            return new CoupledResponses.Changes(new double[][] {{1}}, new double[][] {{0}});
        }

        @Override
        public double[] by(int station, Counted counted, double day) {
            return new double[1];
        }

        @Override
        public double[] offeredBy(int bore, double perDischarge, double day) {
            return new double[1];
        }

        @Override
        public double[] bySteady(int station, double day) {
            return new double[1];
        }

        @Override
        public boolean isAnswered() {
            return false;
        }
    }
}
