package org.headfall.solver.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.headfall.solver.analytic.function.ModifiedBessel;
import org.headfall.solver.analytic.function.WellFunction;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.SealingBed;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.bore.WellLoss;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.schedule.Schedule;
import org.junit.jupiter.api.Test;

/** The simulator against closed forms: sources beside each test. */
class PublishedSolutionsTest {

    private static final double T = 200;
    private static final double S = 2e-4;
    private static final double RATE = 2000;
    private static final double RADIUS = 0.1;

    private static double theis(double rate, double distance, double time) {
        return rate / (4 * Math.PI * T) * WellFunction.of(distance * distance * S / (4 * T * time));
    }

    /** Theis 1935, within 1 % from 3 cells to 1/5 of the distance to the boundary and at the bore, over three decades. */
    @Test
    void drawdownOfAPumpedBoreIsThatOfTheis() {
        RectilinearGrid grid = Fields.refinedSquare(60_000, 1000, 20);
        FlowProblem problem = Fields.problem(
                Aquifer.homogeneous(grid, T, S),
                Fields.heldOnAllSides(grid, 0),
                Fields.pumped("a", 0, 0, RADIUS, Schedule.constant(RATE)));
        new Simulation(problem, Settings.DEFAULT)
                .run(Fields.level(grid, 0), 0, 100, new double[] {0.1, 1, 10, 100}, state -> {
                    assertEquals(-theis(RATE, RADIUS, state.day()), state.boreWallHead()[0], 0.01 * 10);
                    for (double distance : new double[] {100, 300, 1000, 3000, 10_000}) {
                        int cell = grid.locate(distance, 0);
                        double x = grid.centreX(cell);
                        double y = grid.centreY(cell);
                        double expected = theis(RATE, Math.hypot(x, y), state.day());
                        assertEquals(
                                expected,
                                -state.head()[cell],
                                Math.max(0.01 * expected, 0.001),
                                "day " + state.day() + " distance " + distance);
                    }
                    assertTrue(state.balance().relativeDiscrepancy() < 1e-9, "" + state.balance());
                });
    }

    /** Theis 1935 recovery by superposition, within 1 %. */
    @Test
    void recoveryIsTheSuperpositionOfTheis() {
        RectilinearGrid grid = Fields.refinedSquare(60_000, 1000, 20);
        FlowProblem problem = Fields.problem(
                Aquifer.homogeneous(grid, T, S),
                Fields.heldOnAllSides(grid, 0),
                Fields.pumped("a", 0, 0, RADIUS, Fields.pumpedUntil(10, RATE)));
        new Simulation(problem, Settings.DEFAULT)
                .run(Fields.level(grid, 0), 0, 40, new double[] {11, 15, 20, 40}, state -> {
                    double expected = theis(RATE, RADIUS, state.day()) - theis(RATE, RADIUS, state.day() - 10);
                    assertEquals(
                            expected, -state.boreWallHead()[0], Math.max(0.01 * expected, 0.002), "day " + state.day());
                });
    }

    /** Thiem 1906: steady drawdown between two distances, within 0.5 %. */
    @Test
    void steadyRadialFlowIsThatOfThiem() {
        RectilinearGrid grid = Fields.refinedSquare(60_000, 1000, 20);
        FlowProblem problem = Fields.problem(
                Aquifer.homogeneous(grid, T, S),
                Fields.heldOnAllSides(grid, 100),
                Fields.pumped("a", 0, 0, RADIUS, Schedule.constant(RATE)));
        double[] head = new Simulation(problem, Settings.DEFAULT).steadyHead(1);
        int near = grid.locate(100, 0);
        int far = grid.locate(4000, 0);
        double expected = RATE / (2 * Math.PI * T) * Math.log(grid.centreX(far) / grid.centreX(near));
        assertEquals(expected, head[far] - head[near], 0.005 * expected);
    }

    /** De Glee 1930: steady drawdown in a leaky aquifer, {@code Q/(2 pi T) K0(r/B)}, within 1 %. */
    @Test
    void steadyLeakyDrawdownIsThatOfDeGlee() {
        RectilinearGrid grid = Fields.refinedSquare(30_000, 500, 20);
        Aquifer aquifer = Aquifer.homogeneous(grid, T, S);
        double leakageFactor = 2000;
        double conductivity = T * 10 / (leakageFactor * leakageFactor);
        SealingBed bed = new SealingBed(
                Fields.level(grid, 10),
                Fields.level(grid, conductivity),
                Fields.level(grid, 0),
                Fields.level(grid, 50));
        FlowProblem problem = new FlowProblem(
                aquifer,
                Optional.of(bed),
                List.of(),
                List.of(),
                List.of(),
                List.of(Fields.pumped("a", 0, 0, RADIUS, Schedule.constant(RATE))));
        double[] head = new Simulation(problem, Settings.DEFAULT).steadyHead(1);
        for (double distance : new double[] {100, 500, 2000, 5000}) {
            int cell = grid.locate(distance, 0);
            double radius = Math.hypot(grid.centreX(cell), grid.centreY(cell));
            double expected = RATE / (2 * Math.PI * T) * ModifiedBessel.k0(radius / leakageFactor);
            assertEquals(expected, 50 - head[cell], 0.01 * expected, "distance " + distance);
        }
    }

    /** Balance of the rule: head at the wall equals outlet plus well loss; the bore shuts when the head is below. */
    @Test
    void aFreeFlowingBoreMeetsItsOutletAndNeverTakesWaterIn() {
        RectilinearGrid grid = Fields.refinedSquare(20_000, 1000, 50);
        WellLoss loss = new WellLoss(1e-4, 1e-7);
        Bore flowing =
                new Bore("flowing", 0, 0, RADIUS, loss, List.of(new OperatingPhase(0, new Operation.FreeFlow(90))));
        Bore pumped = Fields.pumped("pumped", 300, 0, RADIUS, Fields.pumpedUntil(200, 12_000));
        FlowProblem problem =
                Fields.problem(Aquifer.homogeneous(grid, T, S), Fields.heldOnAllSides(grid, 100), flowing, pumped);
        double[] rates = new double[4];
        int[] next = {0};
        new Simulation(problem, Settings.DEFAULT)
                .run(Fields.level(grid, 100), 0, 400, new double[] {0.01, 199, 260, 400}, state -> {
                    double rate = state.boreRate()[0];
                    rates[next[0]++] = rate;
                    if (rate > 0) {
                        assertEquals(90, state.boreLevel()[0], 1e-3);
                    } else {
                        assertTrue(state.boreWallHead()[0] < 90);
                    }
                });
        assertEquals(0, rates[1]);
        assertTrue(rates[0] > 0 && rates[2] > 0 && rates[3] > rates[2], Arrays.toString(rates));
    }
}
