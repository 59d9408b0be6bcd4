package org.headfall.solver.response;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.bore.WellLoss;
import org.headfall.solver.flow.ChangingSource;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.GivenRates;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.nearfield.ObservedHead;
import org.headfall.solver.schedule.LinearSchedule;
import org.headfall.solver.schedule.Schedule;
import org.headfall.solver.schedule.StepSchedule;
import org.headfall.solver.simulation.Settings;
import org.headfall.solver.simulation.Simulation;
import org.headfall.solver.simulation.Snapshot;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The reference is the simulation on the grid with steps held tightly: heads to 1 mm, and no more off than is stated. */
class CombinedRunTest {

    private static final double END = 4000;
    private static final double[] DAYS = {30, 60, 365, 395, 760, 1000, 1030, 1999, 2500, END};
    private static final Settings TIGHT = new Settings(1e-5, Double.POSITIVE_INFINITY, 1);
    private static final double MILLIMETRE = 1e-3;
    private static final int EXISTING = 1;

    /** What the simulation itself may be off by (m); it takes some 500 steps. */
    private static final double OF_REFERENCE = 3e-4;

    /** Winter and summer, times a rate. */
    private static Operation seasonal(double rate) {
        double[] days = new double[20];
        double[] values = new double[days.length];
        Arrays.setAll(days, i -> i * 182.5);
        Arrays.setAll(values, i -> rate * (i % 2 == 0 ? 0.5 : 1.5));
        return new Operation.PumpedRate(new StepSchedule(days, values), OptionalDouble.empty());
    }

    private static Operation growing(double rate) {
        return new Operation.PumpedRate(
                new LinearSchedule(new double[] {0, 1000, 3000}, new double[] {0.5 * rate, rate, -0.3 * rate}),
                OptionalDouble.empty());
    }

    private static Operation constant(double rate, OptionalDouble lowestLevel) {
        return new Operation.PumpedRate(Schedule.constant(rate), lowestLevel);
    }

    /** The field of other tests, whose T varies from cell to cell and whose boundary and recharge change, with bores anywhere. */
    private static FlowProblem field(Random random, boolean withSpring, Operation... operations) {
        return withBores(StationResponsesTest.field(), random, withSpring, operations);
    }

    private static FlowProblem withBores(
            FlowProblem field, Random random, boolean withSpring, Operation... operations) {
        List<Bore> bores = new ArrayList<>();
        for (int i = 0; i < operations.length; i++) {
            bores.add(new Bore(
                    "bore " + i,
                    4_000 + 12_000 * random.nextDouble(),
                    4_000 + 12_000 * random.nextDouble(),
                    0.1,
                    new WellLoss(1e-4, 1e-7),
                    List.of(new OperatingPhase(0, operations[i]))));
        }
        FlowProblem problem = withSpring ? field : StationResponsesTest.withoutSprings(field);
        return problem.withBores(bores);
    }

    private static FlowProblem only(FlowProblem problem, int... operated) {
        List<Bore> bores = new ArrayList<>();
        for (int i = 0; i < problem.bores().size(); i++) {
            int bore = i;
            boolean on = Arrays.stream(operated).anyMatch(one -> one == bore);
            bores.add(on ? problem.bores().get(i) : problem.bores().get(i).withPhases(List.of()));
        }
        return problem.withBores(bores);
    }

    private static double[] steadyHeads(FlowProblem problem) {
        try (Simulation simulation = new Simulation(problem, TIGHT)) {
            return simulation.steadyHead(0);
        }
    }

    private static CombinedSources sources(FlowProblem problem, CombinedSources.Start start, int... existing) {
        int[] kinds = new int[problem.bores().size()];
        Arrays.stream(existing).forEach(bore -> kinds[bore] = EXISTING);
        return new CombinedSources(
                problem,
                start,
                List.of(StationResponsesTest.point(problem)),
                new GivenRates(problem, start.atRest(), kinds, END),
                new boolean[] {true, true},
                DAYS,
                TIGHT);
    }

    /** Largest difference of heads, and of levels in bores, to the simulation of a problem. */
    private static double difference(CombinedRun run, FlowProblem problem, double[] start) {
        ObservedHead point = StationResponsesTest.point(problem);
        int bores = problem.bores().size();
        double[] largest = new double[1];
        int[] next = {1};
        try (Simulation simulation = new Simulation(problem, TIGHT)) {
            simulation.run(start, 0, END, DAYS, state -> {
                SuperposedState found = run.states().get(next[0]++);
                assertEquals(state.day(), found.day());
                for (double off : differences(state, found, bores)) {
                    largest[0] = Math.max(largest[0], Math.abs(off));
                }
                double there = point.at(state.head(), state.boreRate());
                double found0 = found.head()[found.head().length - 1];
                largest[0] = Math.max(largest[0], Math.abs(there - found0));
            });
        }
        assertEquals(run.states().size(), next[0]);
        return largest[0];
    }

    private static double[] differences(Snapshot state, SuperposedState found, int bores) {
        int springs = state.springHead().length;
        double[] off = new double[2 * bores + springs];
        for (int i = 0; i < bores; i++) {
            off[2 * i] = state.boreWallHead()[i] - found.head()[i];
            off[2 * i + 1] = state.boreLevel()[i] - found.levelInBore()[i];
            assertEquals(state.boreRate()[i], found.discharge()[i], 1, "discharge of bore " + i);
        }
        for (int i = 0; i < springs; i++) {
            off[2 * bores + i] = state.springHead()[i] - found.head()[bores + i];
            assertEquals(state.springDischarge()[i], found.discharge()[bores + i], 1, "discharge of the spring");
        }
        return off;
    }

    private static void assertExact(CombinedRun run, FlowProblem problem, double[] start) {
        double difference = difference(run, problem, start);
        assertEquals(0, difference, MILLIMETRE);
        assertTrue(
                difference <= Math.max(run.estimatedError(), OF_REFERENCE),
                "off by " + difference + " m, stated " + run.estimatedError() + " m");
        assertTrue(run.estimatedError() < 5 * MILLIMETRE, "stated " + run.estimatedError());
    }

    /** Eight bores by seasons, growing and constant, of which two have been there before, are four sources. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void givenRatesAreMet(int seed) {
        Random random = new Random(seed);
        FlowProblem problem = field(
                random,
                false,
                seasonal(900),
                seasonal(300),
                constant(700, OptionalDouble.empty()),
                growing(600),
                growing(1100),
                constant(400, OptionalDouble.empty()),
                seasonal(500),
                constant(1200, OptionalDouble.empty()));
        FlowProblem atRest = only(problem, 5, 7);
        CombinedSources sources = sources(problem, CombinedSources.Start.fromSteady(atRest), 5, 7);
        // Seasons, growth, constant from day 0 on, what is given back without the existing; a boundary and recharge.
        assertEquals(4 + 2, sources.joinedSources());
        assertExact(sources.run(DAYS, MILLIMETRE), problem, steadyHeads(atRest));
    }

    /** A source of one bore, scaled by its discharge: weights of its cells, some negative, add up to more in size. */
    private static ChangingSource ofUnitDischarge(GivenRates.Source ofOne) {
        ChangingSource inflow = ofOne.inflow();
        double strength = Arrays.stream(ofOne.strengths()).sum();
        return new ChangingSource(inflow.name(), inflow.shares(), -strength, inflow.schedule(), inflow.reference());
    }

    /**
     * Rates so large that models read where they are not their own err by more than a simulation does. The reference is
     * second-order responses, one a bore and place: its own error is less.
     */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4})
    void largeErrorsAreNoLargerThanStated(int seed) {
        double times = 60;
        FlowProblem problem = field(
                new Random(seed),
                false,
                seasonal(900 * times),
                seasonal(300 * times),
                constant(700 * times, OptionalDouble.empty()),
                growing(600 * times),
                growing(1100 * times),
                constant(400 * times, OptionalDouble.empty()));
        FlowProblem atRest = only(problem);
        CombinedRun run =
                sources(problem, CombinedSources.Start.fromSteady(atRest)).run(DAYS, MILLIMETRE);
        StationResponses responses =
                StationResponses.fromSteady(problem, List.of(StationResponsesTest.point(problem)), END, TIGHT);
        // One source a bore, and no shared modes: their own error would be as large as what is to be found.
        int[] apart = IntStream.range(0, problem.bores().size()).toArray();
        UndisturbedHeads byBores = new UndisturbedHeads(
                new double[responses.responses().receptors()],
                new GivenRates(problem, Optional.of(atRest), apart, END)
                        .sources().stream()
                                .map(CombinedRunTest::ofUnitDischarge)
                                .toList(),
                responses.responses().table(),
                END);
        double off = 0;
        for (SuperposedState state : run.states().subList(1, run.states().size())) {
            double[] base = responses.undisturbed().on(state.day());
            double[] change = byBores.on(state.day());
            for (int i = 0; i < base.length; i++) {
                off = Math.max(off, Math.abs(base[i] + change[i] - state.head()[i]));
            }
        }
        String found = "off by " + off + " m, stated " + run.estimatedError() + " m";
        assertTrue(off > 4 * OF_REFERENCE, found);
        assertTrue(off <= run.estimatedError(), found);
    }

    @Test
    void aRunWithoutSomeIsMet() {
        FlowProblem problem = field(
                new Random(4),
                false,
                seasonal(900),
                growing(1100),
                constant(400, OptionalDouble.empty()),
                seasonal(500),
                constant(1200, OptionalDouble.empty()));
        FlowProblem atRest = only(problem, 2, 3);
        double[] start = steadyHeads(atRest);
        CombinedSources sources = sources(problem, CombinedSources.Start.fromSteady(atRest), 2, 3);
        assertExact(sources.runWithout(new boolean[] {false, true}, DAYS, MILLIMETRE), only(problem, 0, 1, 4), start);
        assertExact(sources.runWithout(new boolean[] {true}, DAYS, MILLIMETRE), only(problem, 2, 3), start);
        assertExact(sources.runWithout(new boolean[] {true, true}, DAYS, MILLIMETRE), only(problem), start);
    }

    /** A spring and two bores that flow, in the field of bores at given rates. */
    @ParameterizedTest
    @ValueSource(ints = {5, 6})
    void whatFollowsHeadIsMetWithTheRest(int seed) {
        FlowProblem problem = field(
                new Random(seed),
                true,
                constant(900, OptionalDouble.empty()),
                new Operation.FreeFlow(104),
                seasonal(700),
                new Operation.FreeFlow(107),
                constant(600, OptionalDouble.empty()));
        FlowProblem atRest = only(problem, 1, 4);
        double[] start = steadyHeads(atRest);
        CombinedSources sources = sources(problem, CombinedSources.Start.fromSteady(atRest), 1, 4);
        assertEquals(3, sources.followingSources());
        assertExact(sources.run(DAYS, MILLIMETRE), problem, start);
        assertExact(sources.runWithout(new boolean[] {true}, DAYS, MILLIMETRE), only(problem, 1, 4), start);
        assertExact(sources.runWithout(new boolean[] {false, true}, DAYS, MILLIMETRE), only(problem, 0, 2, 3), start);
    }

    @Test
    void aStartFromGivenHeadsIsMet() {
        FlowProblem problem = field(
                new Random(7),
                true,
                seasonal(900),
                constant(400, OptionalDouble.empty()),
                constant(800, OptionalDouble.empty()));
        double[] start = new double[problem.aquifer().grid().cellCount()];
        Arrays.setAll(start, cell -> 112 + 2 * Math.sin(cell % 20 / 3.0) + 2 * Math.cos(cell / 60.0));
        CombinedSources sources = sources(problem, CombinedSources.Start.fromGiven(start));
        assertExact(sources.run(DAYS, MILLIMETRE), problem, start);
    }

    private static double leastRate(FlowProblem problem) {
        double[] least = {Double.POSITIVE_INFINITY};
        try (Simulation simulation = new Simulation(problem, TIGHT)) {
            simulation.run(
                    steadyHeads(only(problem)),
                    0,
                    END,
                    DAYS,
                    state -> least[0] = Math.min(least[0], state.boreRate()[0]));
        }
        return least[0];
    }

    /** A lowest level that is kept changes nothing; one that is not is told. */
    @Test
    void lowestLevelsAreLookedAfter() {
        Random random = new Random(8);
        FlowProblem free = field(random, false, constant(2000, OptionalDouble.empty()));
        Bore bore = free.bores().get(0);
        CombinedRun run =
                sources(free, CombinedSources.Start.fromSteady(only(free))).run(DAYS, MILLIMETRE);
        double lowest = run.states().stream()
                .skip(1)
                .mapToDouble(state -> state.levelInBore()[0])
                .min()
                .orElseThrow();
        for (double margin : new double[] {-0.05, 0.05}) {
            FlowProblem held = free.withBores(List.of(bore.withPhases(
                    List.of(new OperatingPhase(0, constant(2000, OptionalDouble.of(lowest + margin)))))));
            CombinedRun found =
                    sources(held, CombinedSources.Start.fromSteady(only(held))).run(DAYS, MILLIMETRE);
            assertEquals(margin > 0, found.unmetRule().isPresent());
            assertEquals(margin > 0, leastRate(held) < 1999, "margin " + margin);
        }
    }

    /** The level is lowest between the days that are read, when recharge comes back or the boundary turns: looked at all the same. */
    @Test
    void lowestLevelsAreLookedAfterWhereRechargeAndBoundariesTurn() {
        FlowProblem free = field(new Random(8), false, constant(500, OptionalDouble.empty()));
        double[] seldom = {30, 3900, END};
        CombinedRun often = sources(free, CombinedSources.Start.fromSteady(only(free)))
                .run(new double[] {30, 1000, 2000, 3900, END}, MILLIMETRE);
        double[] levels = often.states().stream()
                .mapToDouble(state -> state.levelInBore()[0])
                .toArray();
        double between = Math.min(levels[2], levels[3]);
        double onReadDays = Math.min(Math.min(levels[1], levels[4]), levels[5]);
        assertTrue(between < onReadDays - 0.1, Arrays.toString(levels));
        Operation held = constant(500, OptionalDouble.of(0.5 * (between + onReadDays)));
        FlowProblem problem =
                free.withBores(List.of(free.bores().get(0).withPhases(List.of(new OperatingPhase(0, held)))));
        CombinedRun run = sources(problem, CombinedSources.Start.fromSteady(only(problem)))
                .run(seldom, MILLIMETRE);
        assertTrue(run.unmetRule().isPresent());
        assertEquals(seldom.length + 1, run.states().size());
    }

    /**
     * Same numbers for any number of threads, on a grid of which each gets a part: loops over cells are shared from 8,192 cells
     * on, those of the linear solver from fewer.
     */
    @Test
    void threadsChangeNothing() {
        RectilinearGrid fine = new RectilinearGrid(Axis.uniform(0, 200, 100), Axis.uniform(0, 200, 100));
        FlowProblem problem = withBores(
                StationResponsesTest.field(fine),
                new Random(9),
                true,
                seasonal(900),
                constant(400, OptionalDouble.empty()));
        FlowProblem atRest = only(problem);
        CombinedSources.Start start = CombinedSources.Start.fromSteady(atRest);
        List<SuperposedState> one =
                sources(problem, start).run(DAYS, MILLIMETRE).states();
        List<SuperposedState> two = new CombinedSources(
                        problem,
                        start,
                        List.of(StationResponsesTest.point(problem)),
                        new GivenRates(problem, start.atRest(), new int[2], END),
                        new boolean[] {true, true},
                        DAYS,
                        TIGHT.withThreads(2))
                .run(DAYS, MILLIMETRE)
                .states();
        for (int i = 0; i < one.size(); i++) {
            assertEquals(0, Arrays.compare(one.get(i).head(), two.get(i).head()));
        }
        assertEquals(
                Optional.empty(), sources(problem, start).run(DAYS, MILLIMETRE).unmetRule());
    }
}
