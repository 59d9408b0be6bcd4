package org.headfall.solver.response;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.aquifer.Recharge;
import org.headfall.solver.aquifer.SealingBed;
import org.headfall.solver.aquifer.Side;
import org.headfall.solver.aquifer.SideSegment;
import org.headfall.solver.aquifer.Spring;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.bore.WellLoss;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.nearfield.ObservedHead;
import org.headfall.solver.schedule.LinearSchedule;
import org.headfall.solver.schedule.Schedule;
import org.headfall.solver.schedule.StepSchedule;
import org.headfall.solver.simulation.Settings;
import org.headfall.solver.simulation.Simulation;
import org.junit.jupiter.api.Test;

/** The reference is the simulation with steps held tightly. */
class StationResponsesTest {

    private static final double END = 4000;
    private static final double[] DAYS = {0.5, 30, 365, 366, 1200, 1999, 2500, END};
    private static final Settings TIGHT = new Settings(1e-5, Double.POSITIVE_INFINITY, 1);
    private static final RectilinearGrid GRID =
            new RectilinearGrid(Axis.uniform(0, 1000, 20), Axis.uniform(0, 1000, 20));

    /** A boundary whose head falls, recharge that stops for some years, a spring and two bores. */
    static FlowProblem field(Operation... operations) {
        return field(GRID, operations);
    }

    /** The same on a grid of other cells, over the same 20 km by 20 km. */
    static FlowProblem field(RectilinearGrid grid, Operation... operations) {
        int cells = grid.cellCount();
        Random random = new Random(5);
        double[] t = new double[cells];
        Arrays.setAll(t, cell -> 250 * Math.exp(0.5 * random.nextGaussian()));
        boolean[] active = new boolean[cells];
        Arrays.fill(active, true);
        Aquifer aquifer = new Aquifer(
                grid,
                t,
                t,
                InterferenceTest.level(cells, 3e-4),
                InterferenceTest.level(cells, 0),
                InterferenceTest.level(cells, -50),
                active);
        SealingBed bed = new SealingBed(
                InterferenceTest.level(cells, 60),
                InterferenceTest.level(cells, 2e-6),
                InterferenceTest.level(cells, 3e-6),
                InterferenceTest.level(cells, 105));
        OuterBoundary west = new OuterBoundary.FixedHead(
                "west",
                SideSegment.whole(Side.WEST, grid),
                new LinearSchedule(new double[] {0, 1000, 3000}, new double[] {120, 116, 118}));
        OuterBoundary east =
                new OuterBoundary.FarHead("east", SideSegment.whole(Side.EAST, grid), Schedule.constant(100), 20_000);
        double[] rain = new double[cells];
        Arrays.fill(rain, 0, cells / 10, 2e-4);
        Recharge recharge =
                new Recharge("rain", rain, new StepSchedule(new double[] {0, 365, 2000}, new double[] {1, 0, 1.5}));
        List<Bore> bores = new ArrayList<>();
        for (int i = 0; i < operations.length; i++) {
            bores.add(new Bore(
                    "bore " + i,
                    9_320 + 2_700 * i,
                    8_210,
                    0.1,
                    new WellLoss(0, 1e-7),
                    List.of(new OperatingPhase(0, operations[i]))));
        }
        return new FlowProblem(
                aquifer,
                Optional.of(bed),
                List.of(west, east),
                List.of(recharge),
                List.of(new Spring("spring", 5_250, 12_250, 106, 100)),
                bores);
    }

    static Operation pumped(double rate) {
        return new Operation.PumpedRate(Schedule.constant(rate), OptionalDouble.empty());
    }

    static FlowProblem withoutSprings(FlowProblem problem) {
        return new FlowProblem(
                problem.aquifer(),
                problem.sealingBed(),
                problem.boundaries(),
                problem.recharges(),
                List.of(),
                problem.bores());
    }

    static ObservedHead point(FlowProblem problem) {
        return new ObservedHead(problem.aquifer(), 11_400, 4_100, problem.nearFields());
    }

    /** Idle bores show the heads without any. */
    private static void compare(FlowProblem idle, double[] start, StationResponses responses) {
        ObservedHead point = point(idle);
        double[] first = responses.undisturbed().on(0);
        double[] moved = new double[1];
        try (Simulation simulation = new Simulation(withoutSprings(idle), TIGHT)) {
            simulation.run(start, 0, END, DAYS, state -> {
                double[] found = responses.undisturbed().on(state.day());
                assertArrayEquals(
                        new double[] {found[3], found[1]},
                        responses.undisturbed().on(state.day(), new int[] {3, 1}));
                double[] walls = state.boreWallHead();
                assertEquals(walls[0], found[0], 5e-4, "bore 0 on day " + state.day());
                assertEquals(walls[1], found[1], 5e-4, "bore 1 on day " + state.day());
                assertEquals(point.at(state.head(), state.boreRate()), found[3], 5e-4, "point on day " + state.day());
                moved[0] = Math.max(moved[0], Math.abs(found[0] - first[0]));
            });
        }
        assertTrue(moved[0] > 0.5, "heads move enough to judge, found " + moved[0] + " m");
    }

    @Test
    void headsWithoutBoresFollowBoundariesAndRecharge() {
        FlowProblem idle = field(pumped(0), pumped(0));
        double[] start;
        try (Simulation simulation = new Simulation(withoutSprings(idle), TIGHT)) {
            start = simulation.steadyHead(0);
        }
        compare(idle, start, StationResponses.fromSteady(idle, List.of(point(idle)), END, TIGHT));
    }

    @Test
    void headsWithoutBoresFollowAStartThatIsNotAtRest() {
        FlowProblem idle = field(pumped(0), pumped(0));
        double[] start = new double[GRID.cellCount()];
        Arrays.setAll(start, cell -> 115 + 3 * Math.sin(cell % 20 / 3.0) + 2 * Math.cos(cell / 60.0));
        compare(idle, start, StationResponses.fromGiven(idle, List.of(point(idle)), start, END, 1));
    }

    /** In the steady state too, heads are those without bores less the drawdown by each. */
    @Test
    void steadyResponsesGiveSteadyHeads() {
        FlowProblem problem = withoutSprings(field(pumped(1500), pumped(700)));
        StationResponses responses = StationResponses.fromSteady(problem, List.of(point(problem)), END, TIGHT);
        double[] head;
        try (Simulation simulation = new Simulation(problem, TIGHT)) {
            head = simulation.steadyHead(0);
        }
        double[] rates = {1500, 700};
        double drawdown = 1500 * responses.responses().steadyAt(2, 0)
                + 700 * responses.responses().steadyAt(2, 1);
        double expected = point(problem).at(head, rates);
        assertEquals(expected, responses.undisturbed().atStart()[2] - drawdown, 1e-5);
        assertTrue(drawdown > 0.5);
    }
}
