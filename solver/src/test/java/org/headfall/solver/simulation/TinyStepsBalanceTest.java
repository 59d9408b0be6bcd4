package org.headfall.solver.simulation;

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
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.schedule.Schedule;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Steps of a hundredth of a second and longer in a rough aquifer, in which heads of most cells change by less than their last
 * place: the water balance of every step closes to 1e-9 of its throughput. Conservation of mass, no source needed.
 */
class TinyStepsBalanceTest {

    private static final int ASIDE = 100;
    private static final double CELL = 100;
    private static final double LARGEST_DISCREPANCY = 1e-9;
    private static final int NONE = -1;
    private static final RectilinearGrid GRID =
            new RectilinearGrid(Axis.uniform(0, CELL, ASIDE), Axis.uniform(0, CELL, ASIDE));

    @ParameterizedTest
    @CsvSource({"false, false", "false, true", "true, false", "true, true"})
    void theBalanceOfEveryStepCloses(boolean withBed, boolean fromRest) {
        FlowProblem problem = problem(withBed, NONE);
        expectClosed(problem, fromRest ? atRest(problem) : Fields.level(GRID, 200));
    }

    private static double[] atRest(FlowProblem problem) {
        try (Simulation simulation = new Simulation(problem.withBores(List.of()), Settings.DEFAULT)) {
            return simulation.steadyHead(0);
        }
    }

    private static void expectClosed(FlowProblem problem, double[] start) {
        double[] days = new double[14];
        Arrays.setAll(days, i -> 1e-7 * Math.pow(4, i));
        try (Simulation simulation = new Simulation(problem, Settings.DEFAULT)) {
            simulation.run(start, 0, days[days.length - 1], days, state -> {
                double discrepancy = state.balance().largestStepDiscrepancy();
                assertTrue(discrepancy < LARGEST_DISCREPANCY, "up to day " + state.day() + ": " + discrepancy);
            });
        }
    }

    /** The cell that stores most of all is nearly tight and stands next to the datum, where heads have fine last places. */
    @ParameterizedTest
    @CsvSource({"false, false", "false, true", "true, false", "true, true"})
    void theBalanceClosesWhereTheCellThatStoresMostStandsNextToTheDatum(boolean withBed, boolean fromRest) {
        FlowProblem problem = problem(withBed, ASIDE * ASIDE / 3);
        double[] start = fromRest ? atRest(problem) : Fields.level(GRID, 200);
        start[ASIDE * ASIDE / 3] = 1e-7;
        expectClosed(problem, start);
    }

    /** ln T of variance 3, every cell for itself; one cell at most is nearly tight and stores half as much again as each other. */
    private static FlowProblem problem(boolean withBed, int tight) {
        Random random = new Random(5);
        double[] t = new double[GRID.cellCount()];
        Arrays.setAll(t, cell -> 150 * Math.exp(Math.sqrt(3) * random.nextGaussian()));
        boolean[] active = new boolean[t.length];
        Arrays.fill(active, true);
        double[] storativity = Fields.level(GRID, 2e-4);
        if (tight != NONE) {
            storativity[tight] *= 1.5;
            t[tight] = 1e-6;
        }
        Aquifer aquifer =
                new Aquifer(GRID, t, t, storativity, Fields.level(GRID, -100), Fields.level(GRID, -200), active);
        SealingBed bed = new SealingBed(
                Fields.level(GRID, 100), Fields.level(GRID, 1e-6), Fields.level(GRID, 3e-6), Fields.level(GRID, 180));
        List<Bore> bores = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            double x = ASIDE * CELL * random.nextDouble();
            double y = ASIDE * CELL * random.nextDouble();
            bores.add(Fields.pumped("bore " + i, x, y, 0.1, Schedule.constant(700)));
        }
        return new FlowProblem(
                aquifer,
                withBed ? Optional.of(bed) : Optional.empty(),
                Fields.heldOnAllSides(GRID, 200).subList(0, 2),
                List.of(),
                List.of(new Spring("spring", 0.3 * ASIDE * CELL, 0.4 * ASIDE * CELL, 195, 50)),
                bores);
    }
}
