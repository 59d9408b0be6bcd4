package org.headfall.solver.response;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.NoSteadyStateException;
import org.headfall.solver.nearfield.ObservedHead;
import org.headfall.solver.simulation.Settings;
import org.headfall.solver.simulation.Simulation;
import org.headfall.solver.simulation.Snapshot;
import org.junit.jupiter.api.Test;

/** The reference is the simulation on the grid: its steady state, and the state that it begins with. */
class SuperposedStartTest {

    private static final double END = 400;
    private static final double TOLERANCE = 1e-5;
    private static final Settings TIGHT = new Settings(1e-5, Double.POSITIVE_INFINITY, 1);

    private static FlowProblem field() {
        return StationResponsesTest.field(new Operation.FreeFlow(105), StationResponsesTest.pumped(1200));
    }

    private static void compare(FlowProblem problem, double[] heads, double day, SuperposedState found) {
        ObservedHead point = StationResponsesTest.point(problem);
        try (Simulation simulation = new Simulation(problem, TIGHT)) {
            simulation.run(heads, day, day, new double[] {day}, state -> compare(state, point, found));
        }
    }

    private static void compare(Snapshot expected, ObservedHead point, SuperposedState found) {
        int bores = expected.boreRate().length;
        assertEquals(3, found.discharge().length, "two bores and a spring");
        for (int bore = 0; bore < bores; bore++) {
            assertEquals(expected.boreWallHead()[bore], found.head()[bore], 2e-4, "bore " + bore);
            assertEquals(expected.boreLevel()[bore], found.levelInBore()[bore], 2e-4, "level in bore " + bore);
            assertEquals(expected.boreRate()[bore], found.discharge()[bore], 0.1, "rate of bore " + bore);
        }
        assertEquals(expected.springHead()[0], found.head()[bores], 2e-4);
        assertEquals(expected.springDischarge()[0], found.discharge()[bores], 0.1);
        assertEquals(point.at(expected.head(), expected.boreRate()), found.head()[bores + 1], 2e-4);
        assertTrue(found.discharge()[0] > 100, "flows by itself: " + found.discharge()[0]);
        assertTrue(found.discharge()[2] > 100, "the spring flows: " + found.discharge()[2]);
    }

    @Test
    void dischargesAtRestAreThoseOfTheSteadyState() {
        FlowProblem problem = field();
        StationResponses responses =
                StationResponses.fromSteady(problem, List.of(StationResponsesTest.point(problem)), END, TIGHT);
        SuperposedStart start = SuperposedStart.atRest(problem, responses, TOLERANCE);
        double[] heads;
        try (Simulation simulation = new Simulation(problem, TIGHT)) {
            heads = simulation.steadyHead(0);
        }
        compare(problem, heads, 0, start.state());
        assertArrayEquals(start.state().discharge(), start.reference(), "only changes are superposed");
        assertTrue(start.metRules());
    }

    @Test
    void givenHeadsAreLoweredBesideBoresAlone() {
        FlowProblem field = field();
        List<Bore> bores = new ArrayList<>();
        field.bores()
                .forEach(bore -> bores.add(bore.withPhases(
                        List.of(new OperatingPhase(-100, bore.phases().get(0).operation())))));
        FlowProblem problem = field.withBores(bores);
        double[] heads = new double[problem.aquifer().grid().cellCount()];
        Arrays.setAll(heads, cell -> 114 + 2 * Math.sin(cell % 20 / 3.0));
        StationResponses responses =
                StationResponses.fromGiven(problem, List.of(StationResponsesTest.point(problem)), heads, END, 1);
        SuperposedStart start = SuperposedStart.given(problem, responses, TOLERANCE);
        compare(problem, heads, -1e-6, start.state());
        assertArrayEquals(new double[3], start.reference(), "all of each discharge is superposed");
        assertArrayEquals(new double[4], start.drawdown());
    }

    @Test
    void givenRatesMeetNoRules() {
        FlowProblem problem =
                StationResponsesTest.withoutSprings(StationResponsesTest.field(StationResponsesTest.pumped(1200)));
        StationResponses responses = StationResponses.fromSteady(problem, List.of(), END, TIGHT);
        assertFalse(SuperposedStart.atRest(problem, responses, TOLERANCE).metRules());
    }

    @Test
    void nothingIsAtRestWhereNothingTiesHeadsDown() {
        FlowProblem tied =
                StationResponsesTest.withoutSprings(StationResponsesTest.field(StationResponsesTest.pumped(1200)));
        FlowProblem closed =
                new FlowProblem(tied.aquifer(), Optional.empty(), List.of(), List.of(), List.of(), tied.bores());
        double[] heads = InterferenceTest.level(tied.aquifer().grid().cellCount(), 110);
        StationResponses responses = StationResponses.fromGiven(closed, List.of(), heads, END, 1);
        assertThrows(NoSteadyStateException.class, () -> SuperposedStart.atRest(closed, responses, TOLERANCE));
    }
}
