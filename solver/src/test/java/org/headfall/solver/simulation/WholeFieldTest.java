package org.headfall.solver.simulation;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.SealingBed;
import org.headfall.solver.aquifer.Spring;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.bore.WellLoss;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.grid.RefinedAxis;
import org.headfall.solver.schedule.StepSchedule;
import org.junit.jupiter.api.Test;

/** A field with everything in it: many bores with seasonal rates, free flow, a spring, a storing sealing bed. */
class WholeFieldTest {

    private static final int CELLS_ASIDE = Integer.getInteger("headfall.test.cells-aside", 30);
    private static final int YEARS = Integer.getInteger("headfall.test.years", 1);

    @Test
    void theBalanceClosesInEveryStepWithRulesAndBedStorage() {
        FlowProblem problem = field();
        double[] start = start(problem);
        double[] months = months();
        RunStatistics statistics = new Simulation(problem, Settings.DEFAULT)
                .run(start, 0, months[months.length - 1], months, state -> {
                    for (double head : state.head()) {
                        assertTrue(head > 0 && head < 201, "day " + state.day() + " head " + head);
                    }
                })
                .statistics();
        assertTrue(statistics.largestBalanceDiscrepancy() < 1e-9, statistics.toString());
        assertTrue(statistics.largestStepError() <= 0.001, statistics.toString());
    }

    /** The reference is the same run with a hundredth of the error allowed to a step. */
    @Test
    void theErrorOfTimeSteppingIsEstimatedWell() {
        FlowProblem problem = field();
        List<double[]> exact = new ArrayList<>();
        run(problem, 1e-5, state -> exact.add(state.head().clone()));
        double[] largest = new double[2];
        int[] next = {0};
        run(problem, 1e-3, state -> {
            double[] reference = exact.get(next[0]++);
            for (int cell = 0; cell < reference.length; cell++) {
                largest[0] = Math.max(largest[0], Math.abs(state.head()[cell] - reference[cell]));
                largest[1] = Math.max(largest[1], Math.abs(state.headError()[cell]));
            }
        });
        assertTrue(largest[1] > 0.5 * largest[0] && largest[1] < 4 * largest[0], Arrays.toString(largest));
    }

    /** Loops are shared between threads from a few thousand cells on. */
    @Test
    void aRunIsTheSameToTheLastBitWithOneAndWithTwoThreads() {
        FlowProblem problem = field(120);
        assertTrue(problem.aquifer().grid().cellCount() > 3 * 4096);
        double[] start = start(problem);
        double[][] heads = new double[2][];
        RunStatistics[] statistics = new RunStatistics[2];
        for (int threads = 1; threads <= 2; threads++) {
            int run = threads - 1;
            Settings settings = new Settings(1e-3, Double.POSITIVE_INFINITY, threads);
            try (Simulation simulation = new Simulation(problem, settings)) {
                statistics[run] = simulation
                        .run(
                                start,
                                0,
                                10,
                                new double[] {10},
                                state -> heads[run] = state.head().clone())
                        .statistics();
            }
        }
        assertArrayEquals(heads[0], heads[1], 0.0);
        assertEquals(statistics[0].largestBalanceDiscrepancy(), statistics[1].largestBalanceDiscrepancy(), 0.0);
        assertEquals(statistics[0].steps(), statistics[1].steps());
    }

    private static void run(FlowProblem problem, double accuracy, SimulationObserver observer) {
        try (Simulation simulation = new Simulation(problem, new Settings(accuracy, Double.POSITIVE_INFINITY, 1))) {
            double[] months = months();
            simulation.run(start(problem), 0, months[months.length - 1], months, observer);
        }
    }

    private static double[] start(FlowProblem problem) {
        return new Simulation(problem.withBores(List.of()), Settings.DEFAULT).steadyHead(0);
    }

    private static double[] months() {
        double[] months = new double[12 * YEARS];
        Arrays.setAll(months, month -> 365.25 / 12 * (month + 1));
        return months;
    }

    private static FlowProblem field() {
        return field(CELLS_ASIDE);
    }

    private static FlowProblem field(int cellsAside) {
        double[] eastings = {40_000, 41_000, 42_500, 43_000, 60_000};
        Axis x = new RefinedAxis(100_000.0 / cellsAside, 100, 1.3).between(0, 100_000, eastings);
        Axis y = new RefinedAxis(80_000.0 / cellsAside, 100, 1.3).between(0, 80_000, 30_000, 31_000, 50_000);
        RectilinearGrid grid = new RectilinearGrid(x, y);
        Random random = new Random(11);
        double[] t = new double[grid.cellCount()];
        Arrays.setAll(t, cell -> 150 * Math.exp(0.8 * random.nextGaussian()));
        boolean[] active = new boolean[t.length];
        Arrays.fill(active, true);
        Aquifer aquifer = new Aquifer(
                grid, t, t, Fields.level(grid, 2e-4), Fields.level(grid, -100), Fields.level(grid, -200), active);
        SealingBed bed = new SealingBed(
                Fields.level(grid, 100), Fields.level(grid, 1e-6), Fields.level(grid, 3e-6), Fields.level(grid, 180));
        return new FlowProblem(
                aquifer,
                Optional.of(bed),
                Fields.heldOnAllSides(grid, 200).subList(0, 2),
                List.of(),
                List.of(new Spring("spring", 30_000, 40_000, 195, 50)),
                bores(eastings));
    }

    private static List<Bore> bores(double[] eastings) {
        List<Bore> bores = new ArrayList<>();
        double[] days = new double[2 * YEARS];
        double[] rates = new double[2 * YEARS];
        for (int i = 0; i < days.length; i++) {
            days[i] = 182.625 * i;
            rates[i] = i % 2 == 0 ? 2500 : 1200;
        }
        for (double easting : eastings) {
            bores.add(Fields.pumped("at " + easting, easting, 30_000, 0.1, new StepSchedule(days, rates)));
            bores.add(Fields.pumped("north of " + easting, easting, 31_000, 0.1, new StepSchedule(days, rates)));
        }
        for (double easting : new double[] {41_000, 60_000}) {
            bores.add(new Bore(
                    "free at " + easting,
                    easting,
                    50_000,
                    0.1,
                    new WellLoss(0, 1e-6),
                    List.of(new OperatingPhase(0, new Operation.FreeFlow(185)))));
        }
        return bores;
    }
}
