package org.headfall.solver.response;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.bore.PumpCurve;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.FlowSystem;
import org.headfall.solver.nearfield.ObservedHead;
import org.headfall.solver.schedule.LinearSchedule;
import org.headfall.solver.schedule.Schedule;
import org.headfall.solver.schedule.StepSchedule;
import org.headfall.solver.simulation.Settings;
import org.headfall.solver.simulation.Simulation;
import org.junit.jupiter.api.Test;

/** The reference is the simulation on the grid. */
class SuperposedRunTest {

    private static final double END = 4000;
    private static final double[] DAYS = {0.5, 30, 365, 400, 900, 1000.5, 1200, 1999, 2500, END};
    private static final Settings SETTINGS = new Settings(1e-4, Double.POSITIVE_INFINITY, 1);

    /** Largest differences to the simulation, and how much there was to differ in. */
    private record Difference(double head, double discharge, double level, double drawdown, double flow) {}

    private static Operation steps(OptionalDouble lowest) {
        return new Operation.PumpedRate(
                new StepSchedule(new double[] {0, 365, 1000}, new double[] {1800, 300, 2600}), lowest);
    }

    private static Operation slopes() {
        return new Operation.PumpedRate(
                new LinearSchedule(new double[] {0, 400, 2000}, new double[] {500, 1500, -400}),
                OptionalDouble.empty());
    }

    private static FlowProblem without(FlowProblem problem, int... off) {
        List<Bore> bores = new ArrayList<>(problem.bores());
        for (int bore : off) {
            bores.set(bore, bores.get(bore).withPhases(List.of()));
        }
        return problem.withBores(bores);
    }

    private static Difference compare(FlowProblem problem, Optional<FlowProblem> atRest, double[] start) {
        ObservedHead point = StationResponsesTest.point(problem);
        StationResponses responses = atRest.isPresent()
                ? StationResponses.fromSteady(problem, List.of(point), END, SETTINGS)
                : StationResponses.fromGiven(problem, List.of(point), start, END, 1);
        SuperposedRun run = atRest.isPresent()
                ? SuperposedRun.fromSteady(problem, atRest.get(), responses, 1e-3)
                : SuperposedRun.fromGiven(problem, responses, 1e-3);
        run.run(DAYS, END);
        assertTrue(run.estimatedError() < 1e-3, "estimated error " + run.estimatedError());
        int bores = problem.bores().size();
        int springs = problem.springs().size();
        double[] largest = new double[5];
        int[] next = {1};
        double[] first = run.states().get(0).head();
        try (Simulation simulation = new Simulation(problem, SETTINGS)) {
            simulation.run(start, 0, END, DAYS, state -> {
                SuperposedState found = run.states().get(next[0]++);
                assertEquals(state.day(), found.day());
                for (int i = 0; i < bores; i++) {
                    note(largest, 0, state.boreWallHead()[i], found.head()[i]);
                    note(largest, 1, state.boreRate()[i], found.discharge()[i]);
                    note(largest, 2, state.boreLevel()[i], found.levelInBore()[i]);
                    note(largest, 3, state.boreWallHead()[i], first[i]);
                    assertEquals(state.boreWantedRate()[i], found.asked()[i], 1, "asked of " + i);
                    largest[4] = Math.max(largest[4], Math.abs(state.boreRate()[i]));
                }
                for (int i = 0; i < springs; i++) {
                    note(largest, 0, state.springHead()[i], found.head()[bores + i]);
                    note(largest, 1, state.springDischarge()[i], found.discharge()[bores + i]);
                }
                note(largest, 0, point.at(state.head(), state.boreRate()), found.head()[bores + springs]);
            });
        }
        return new Difference(largest[0], largest[1], largest[2], largest[3], largest[4]);
    }

    private static void note(double[] largest, int kind, double expected, double found) {
        largest[kind] = Math.max(largest[kind], Math.abs(expected - found));
    }

    private static double[] steadyHeads(FlowProblem problem) {
        try (Simulation simulation = new Simulation(problem, SETTINGS)) {
            return simulation.steadyHead(0);
        }
    }

    /** Schedules that jump and run straight, boundaries and recharge that change: to 1 mm, where heads fall by metres. */
    @Test
    void schedulesAreMetToAMillimetre() {
        FlowProblem problem = StationResponsesTest.withoutSprings(
                StationResponsesTest.field(steps(OptionalDouble.empty()), slopes()));
        FlowProblem atRest = without(problem, 1);
        Difference difference = compare(problem, Optional.of(atRest), steadyHeads(atRest));
        assertEquals(0, difference.head(), 1e-3);
        assertEquals(0, difference.level(), 1e-3);
        assertEquals(0, difference.discharge(), 1e-9);
        assertTrue(difference.drawdown() > 3, "falls by " + difference.drawdown());
    }

    /** A spring, a bore that flows, a pump at its lowest level and one on its curve, from rest with two of them. */
    @Test
    void rulesAreMetToFiveMillimetres() {
        PumpCurve curve = new PumpCurve(new double[] {0, 800, 1600}, new double[] {40, 34, 20});
        FlowProblem problem = StationResponsesTest.field(
                steps(OptionalDouble.of(100)),
                new Operation.FreeFlow(105),
                new Operation.PumpedByCurve(curve, 135, Optional.empty(), OptionalDouble.empty()),
                slopes());
        FlowProblem atRest = without(problem, 0, 3);
        Difference difference = compare(problem, Optional.of(atRest), steadyHeads(atRest));
        assertEquals(0, difference.head(), 2e-3);
        assertEquals(0, difference.level(), 2e-3);
        assertEquals(0, difference.discharge(), 0.005 * difference.flow());
        assertTrue(difference.drawdown() > 3, "falls by " + difference.drawdown());
    }

    /** Given heads far from rest, a bore that flowed before and a pump that starts later. */
    @Test
    void aStartFromGivenHeadsIsMetToo() {
        FlowProblem field = StationResponsesTest.field(new Operation.FreeFlow(105), slopes());
        List<Bore> bores = new ArrayList<>(field.bores());
        bores.set(
                0,
                bores.get(0)
                        .withPhases(List.of(
                                new OperatingPhase(-100, new Operation.FreeFlow(105)),
                                new OperatingPhase(
                                        900,
                                        new Operation.PumpedRate(Schedule.constant(900), OptionalDouble.empty())))));
        FlowProblem problem = field.withBores(bores);
        double[] start = new double[problem.aquifer().grid().cellCount()];
        Arrays.setAll(start, cell -> 112 + 2 * Math.sin(cell % 20 / 3.0) + 2 * Math.cos(cell / 60.0));
        Difference difference = compare(problem, Optional.empty(), start);
        assertEquals(0, difference.head(), 2e-3);
        assertEquals(0, difference.discharge(), 0.005 * difference.flow());
    }

    /** Largest difference of heads between two runs on the same days. */
    private static double difference(SuperposedRun one, SuperposedRun other) {
        double largest = 0;
        for (int k = 0; k < one.states().size(); k++) {
            double[] head = one.states().get(k).head();
            double[] same = other.states().get(k).head();
            for (int i = 0; i < head.length; i++) {
                largest = Math.max(largest, Math.abs(head[i] - same[i]));
            }
        }
        return largest;
    }

    /** From the same responses: what a coarse run is off by is no more than it states, which counts what rules are missed by. */
    @Test
    void statedErrorCountsTheToleranceOfRules() {
        double coarse = 0.2;
        FlowProblem problem = StationResponsesTest.field(
                steps(OptionalDouble.empty()), new Operation.FreeFlow(105), new Operation.FreeFlow(103));
        StationResponses responses = StationResponses.fromSteady(problem, List.of(), END, SETTINGS);
        SuperposedRun exact = SuperposedRun.fromSteady(problem, problem, responses, 1e-6);
        exact.run(DAYS, END);
        SuperposedRun rough = SuperposedRun.fromSteady(problem, problem, responses, coarse);
        rough.run(DAYS, END);
        assertTrue(rough.estimatedError() >= FlowSystem.ruleTolerance(coarse), "stated " + rough.estimatedError());
        double off = difference(exact, rough);
        assertTrue(off <= rough.estimatedError(), "off by " + off + ", stated " + rough.estimatedError());
        FlowProblem given = StationResponsesTest.withoutSprings(
                StationResponsesTest.field(steps(OptionalDouble.empty()), slopes()));
        SuperposedRun noRules = SuperposedRun.fromSteady(
                given, given, StationResponses.fromSteady(given, List.of(), END, SETTINGS), coarse);
        noRules.run(DAYS, END);
        assertTrue(noRules.estimatedError() < FlowSystem.ruleTolerance(coarse), "stated " + noRules.estimatedError());
    }

    /** A rate that goes up and down every hundred days by straight lines. */
    private static Operation zigzag(OptionalDouble lowest) {
        double[] days = new double[41];
        double[] rates = new double[41];
        Arrays.setAll(days, k -> 100 * k);
        Arrays.setAll(rates, k -> k % 2 == 0 ? 300 : 2600);
        return new Operation.PumpedRate(new LinearSchedule(days, rates), lowest);
    }

    private static SuperposedRun run(FlowProblem problem, FlowProblem atRest) {
        StationResponses responses = StationResponses.fromSteady(problem, List.of(), END, SETTINGS);
        SuperposedRun run = SuperposedRun.fromSteady(problem, atRest, responses, 1e-3);
        run.run(DAYS, END);
        return run;
    }

    /** A pump far above its lowest level runs as one that has none: the same heads, with not one step more. */
    @Test
    void aPumpThatGetsAllItAsksForTakesNoStepsOfItsOwn() {
        FlowProblem lowest = StationResponsesTest.withoutSprings(
                StationResponsesTest.field(zigzag(OptionalDouble.of(-500)), new Operation.FreeFlow(105)));
        FlowProblem none = StationResponsesTest.withoutSprings(
                StationResponsesTest.field(zigzag(OptionalDouble.empty()), new Operation.FreeFlow(105)));
        SuperposedRun withLowest = run(lowest, without(lowest, 0));
        SuperposedRun withNone = run(none, without(none, 0));
        assertEquals(withNone.history().steps(), withLowest.history().steps());
        assertEquals(0, difference(withNone, withLowest), 1e-9);
    }

    /** A pump whose rate bends, which comes to its lowest level and off it again with each of the bends. */
    @Test
    void aPumpComesToItsLowestLevelAndOffIt() {
        FlowProblem problem =
                StationResponsesTest.field(zigzag(OptionalDouble.of(100)), new Operation.FreeFlow(105), slopes());
        FlowProblem atRest = without(problem, 0, 2);
        Difference difference = compare(problem, Optional.of(atRest), steadyHeads(atRest));
        assertEquals(0, difference.head(), 2e-3);
        assertEquals(0, difference.level(), 2e-3);
        assertEquals(0, difference.discharge(), 0.005 * difference.flow());
        SuperposedRun run = run(problem, atRest);
        long limited = run.states().stream()
                .filter(state -> state.discharge()[0] < state.asked()[0] - 1)
                .count();
        assertTrue(limited > 0 && limited < DAYS.length, limited + " of " + DAYS.length);
    }
}
