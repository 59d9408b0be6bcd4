package org.headfall.solver.response;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.SolutionMemory;
import org.headfall.solver.flow.WaterBalance;
import org.headfall.solver.flow.WaterBalance.Kind;
import org.headfall.solver.nearfield.ObservedHead;
import org.headfall.solver.schedule.LinearSchedule;
import org.headfall.solver.schedule.StepSchedule;
import org.headfall.solver.simulation.Settings;
import org.headfall.solver.simulation.Simulation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The reference is the simulation with steps held tightly. */
class SuperposedFieldsTest {

    private static final double END = 4000;
    private static final double[] DAYS = {0.5, 30, 365, 400, 900, 1000.5, 1200, 1999, 2500, END};
    private static final Settings TIGHT = new Settings(5e-6, Double.POSITIVE_INFINITY, 2);

    @SuppressWarnings("ArrayRecordComponent") // read within one test, never compared
    private record Day(double day, double[] head, WaterBalance balance) {}

    private static List<Day> simulated(FlowProblem problem, double[] start) {
        List<Day> days = new ArrayList<>();
        try (Simulation simulation = new Simulation(problem, TIGHT)) {
            simulation.run(
                    start,
                    0,
                    END,
                    DAYS,
                    state -> days.add(new Day(state.day(), state.head().clone(), state.balance())));
        }
        return days;
    }

    private static List<Day> superposed(
            FlowProblem problem, Optional<FlowProblem> atRest, double[] start, double accuracy, double[] error) {
        ObservedHead point = StationResponsesTest.point(problem);
        Settings settings = new Settings(accuracy, Double.POSITIVE_INFINITY, 2);
        FieldResponses responses = atRest.isPresent()
                ? FieldResponses.fromSteady(problem, List.of(point), start, END, SolutionMemory.heap(), settings)
                : FieldResponses.fromGiven(
                        problem, List.of(point), start, END, SolutionMemory.heap(), settings.withThreads(1));
        SuperposedRun run = atRest.isPresent()
                ? SuperposedRun.fromSteady(problem, atRest.get(), responses.stations(), 0.5 * accuracy)
                : SuperposedRun.fromGiven(problem, responses.stations(), 0.5 * accuracy);
        run.run(DAYS, END);
        double[] reference =
                new double[problem.bores().size() + problem.springs().size()];
        if (atRest.isPresent()) {
            try (Simulation simulation = new Simulation(atRest.get(), TIGHT)) {
                simulation.run(start, 0, 0, new double[] {0}, state -> {
                    System.arraycopy(state.boreRate(), 0, reference, 0, state.boreRate().length);
                    System.arraycopy(
                            state.springDischarge(),
                            0,
                            reference,
                            state.boreRate().length,
                            state.springDischarge().length);
                });
            }
        }
        SuperposedFields fields = new SuperposedFields(responses, run, start, reference, DAYS);
        error[0] = fields.error() + run.estimatedError();
        List<Day> days = new ArrayList<>();
        fields.run(2, (day, head, balance) -> days.add(new Day(day, head.clone(), balance)));
        return days;
    }

    /** Answers the error stated (m). */
    private static double compare(
            FlowProblem problem, Optional<FlowProblem> atRest, double[] start, double accuracy, double tolerance) {
        double[] error = new double[1];
        List<Day> expected = simulated(problem, start);
        List<Day> found = superposed(problem, atRest, start, accuracy, error);
        double moved = 0;
        assertEquals(expected.size(), found.size());
        for (int k = 0; k < expected.size(); k++) {
            Day day = expected.get(k);
            double worst = 0;
            for (int cell = 0; cell < start.length; cell++) {
                worst = Math.max(worst, Math.abs(day.head()[cell] - found.get(k).head()[cell]));
                moved = Math.max(moved, Math.abs(day.head()[cell] - start[cell]));
            }
            assertEquals(0, worst, tolerance, "day " + day.day());
            assertTrue(worst <= error[0], "error estimated at " + error[0] + ", found " + worst);
            requireSame(day.balance(), found.get(k).balance());
        }
        assertTrue(moved > 3, "heads move by " + moved);
        return error[0];
    }

    private static void requireSame(WaterBalance expected, WaterBalance found) {
        double throughput = Math.max(expected.inflow(), expected.outflow());
        for (int i = 0; i < expected.terms().size(); i++) {
            WaterBalance.Term one = expected.terms().get(i);
            WaterBalance.Term other = found.terms().get(i);
            assertEquals(one.name(), other.name());
            double net = one.inflow() - one.outflow();
            assertEquals(net, other.inflow() - other.outflow(), 1e-4 * throughput, one.name());
            // What a cell gives and takes back between two days counts on both sides of a run by steps.
            boolean stored = one.kind() == Kind.STORAGE || one.kind() == Kind.SEALING_BED_STORAGE;
            boolean oneWay = Math.min(one.inflow(), one.outflow()) < 1e-4 * throughput;
            if (!stored && oneWay) {
                assertEquals(one.inflow(), other.inflow(), 2e-4 * throughput, one.name());
            }
            assertTrue(other.inflow() >= 0 && other.outflow() >= 0);
        }
        assertTrue(found.relativeDiscrepancy() < 1e-6, "discrepancy " + found.relativeDiscrepancy());
    }

    private static double[] steady(FlowProblem problem) {
        try (Simulation simulation = new Simulation(problem, TIGHT)) {
            return simulation.steadyHead(0);
        }
    }

    private static FlowProblem without(FlowProblem problem, int... off) {
        List<Bore> bores = new ArrayList<>(problem.bores());
        for (int bore : off) {
            bores.set(bore, bores.get(bore).withPhases(List.of()));
        }
        return problem.withBores(bores);
    }

    private static Operation steps() {
        return new Operation.PumpedRate(
                new StepSchedule(new double[] {0, 365, 1000}, new double[] {1800, 300, 2600}), OptionalDouble.empty());
    }

    private static Operation slopes() {
        return new Operation.PumpedRate(
                new LinearSchedule(new double[] {0, 400, 2000}, new double[] {500, 1500, -400}),
                OptionalDouble.empty());
    }

    /** Rates that jump and run straight, a boundary whose head changes, recharge of 8,000 m³/d that stops and comes back. */
    @Test
    void givenRates() {
        FlowProblem problem = StationResponsesTest.withoutSprings(StationResponsesTest.field(steps(), slopes()));
        FlowProblem atRest = without(problem, 1);
        compare(problem, Optional.of(atRest), steady(atRest), 1e-3, 1e-3);
    }

    /** A spring and a bore that flows besides. */
    @Test
    void rulesThatFollowHead() {
        FlowProblem problem = StationResponsesTest.field(steps(), new Operation.FreeFlow(105), slopes());
        FlowProblem atRest = without(problem, 0, 2);
        compare(problem, Optional.of(atRest), steady(atRest), 1e-3, 1e-3);
    }

    /** Heads at the start are metres out of balance in every cell, within a few cells; twice the tolerance is allowed. */
    @Test
    void givenStart() {
        FlowProblem problem = StationResponsesTest.field(new Operation.FreeFlow(105), slopes());
        double[] start = new double[problem.aquifer().grid().cellCount()];
        Arrays.setAll(start, cell -> 112 + 2 * Math.sin(cell % 20 / 3.0) + 2 * Math.cos(cell / 60.0));
        compare(problem, Optional.empty(), start, 1e-3, 2e-3);
    }

    /**
     * Fields drawn at random (T from 100 to 1,000 m²/d, eight bores of which one flows, three springs, rates that change twice a
     * year): heads are within the error stated, and the error stated is within the tolerance. Common practice, no source.
     */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void randomFieldsWithinStatedError(long seed) {
        RandomWellField field = new RandomWellField(seed);
        for (double accuracy : new double[] {1e-3, 1e-2}) {
            double stated =
                    compare(field.problem(), Optional.of(field.atRest()), steady(field.atRest()), accuracy, accuracy);
            assertTrue(stated <= accuracy, "stated " + stated + " m of " + accuracy + " m");
        }
    }
}
