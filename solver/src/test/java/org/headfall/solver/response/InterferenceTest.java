package org.headfall.solver.response;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.OuterBoundary;
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
import org.headfall.solver.schedule.Schedule;
import org.headfall.solver.schedule.StepSchedule;
import org.headfall.solver.simulation.Settings;
import org.headfall.solver.simulation.Simulation;
import org.junit.jupiter.api.Test;

class InterferenceTest {

    static final double START_HEAD = 100;

    static FlowProblem field() {
        RectilinearGrid grid = new RectilinearGrid(Axis.uniform(0, 500, 40), Axis.uniform(0, 500, 30));
        int cells = grid.cellCount();
        Random random = new Random(8);
        double[] t = new double[cells];
        Arrays.setAll(t, cell -> 200 * Math.exp(0.7 * random.nextGaussian()));
        boolean[] active = new boolean[cells];
        Arrays.fill(active, true);
        Aquifer aquifer = new Aquifer(grid, t, t, level(cells, 2e-4), level(cells, 0), level(cells, -50), active);
        SealingBed bed =
                new SealingBed(level(cells, 50), level(cells, 1e-5), level(cells, 3e-6), level(cells, START_HEAD));
        OuterBoundary west =
                new OuterBoundary.FixedHead("west", SideSegment.whole(Side.WEST, grid), Schedule.constant(START_HEAD));
        return new FlowProblem(
                aquifer,
                Optional.of(bed),
                List.of(west),
                List.of(),
                List.of(new Spring("spring", 5_250, 9_250, 99.5, 100)),
                List.of(
                        bore(
                                "a",
                                10_130,
                                new Operation.PumpedRate(
                                        new StepSchedule(new double[] {0, 100, 250}, new double[] {1500, 400, 2200}),
                                        OptionalDouble.empty())),
                        bore("b", 11_930, new Operation.PumpedRate(Schedule.constant(900), OptionalDouble.empty())),
                        bore("c", 13_580, new Operation.FreeFlow(97))));
    }

    private static Bore bore(String name, double x, Operation operation) {
        return new Bore(name, x, 7_310, 0.1, new WellLoss(0, 1e-7), List.of(new OperatingPhase(0, operation)));
    }

    static double[] level(int cells, double value) {
        double[] field = new double[cells];
        Arrays.fill(field, value);
        return field;
    }

    /** Rules or not: the sum over all causes is the drawdown of the run, to 0.2 mm. */
    @Test
    void drawdownByCauseAddsUpToThatOfTheRun() {
        FlowProblem problem = field();
        double[] days = {50, 120, 400};
        double[] head = level(problem.aquifer().grid().cellCount(), START_HEAD);
        double[][] run = new double[days.length][4];
        int[] next = {0};
        try (Simulation simulation = new Simulation(problem, new Settings(2e-5, Double.POSITIVE_INFINITY, 1))) {
            Simulation.Outcome outcome = simulation.run(head, 0, 400, days, state -> {
                double[] row = run[next[0]++];
                System.arraycopy(state.boreWallHead(), 0, row, 0, 3);
                row[3] = state.springHead()[0];
            });
            UnitResponses responses = UnitResponses.of(problem, List.of(), 400, 1);
            Interference interference = new Interference(responses, outcome.rateHistory(), new double[4]);
            double[][][] splits = interference.drawdown(days);
            for (int k = 0; k < days.length; k++) {
                double[][] split = splits[k];
                for (int receptor = 0; receptor < 4; receptor++) {
                    double sum = Arrays.stream(split[receptor]).sum();
                    assertEquals(
                            START_HEAD - run[k][receptor], sum, 0.0002, "day " + days[k] + " receptor " + receptor);
                }
            }
        }
    }
}
