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

    @ParameterizedTest
    @CsvSource({"false, false", "false, true", "true, false", "true, true"})
    void theBalanceOfEveryStepCloses(boolean withBed, boolean fromRest) {
        FlowProblem problem = problem(withBed);
        RectilinearGrid grid = problem.aquifer().grid();
        double[] start = fromRest
                ? new Simulation(problem.withBores(List.of()), Settings.DEFAULT).steadyHead(0)
                : Fields.level(grid, 200);
        double[] days = new double[14];
        Arrays.setAll(days, i -> 1e-7 * Math.pow(4, i));
        try (Simulation simulation = new Simulation(problem, Settings.DEFAULT)) {
            simulation.run(start, 0, days[days.length - 1], days, state -> {
                double discrepancy = state.balance().largestStepDiscrepancy();
                assertTrue(discrepancy < LARGEST_DISCREPANCY, "up to day " + state.day() + ": " + discrepancy);
            });
        }
    }

    /** ln T of variance 3, every cell for itself. */
    private static FlowProblem problem(boolean withBed) {
        RectilinearGrid grid = new RectilinearGrid(Axis.uniform(0, CELL, ASIDE), Axis.uniform(0, CELL, ASIDE));
        Random random = new Random(5);
        double[] t = new double[grid.cellCount()];
        Arrays.setAll(t, cell -> 150 * Math.exp(Math.sqrt(3) * random.nextGaussian()));
        boolean[] active = new boolean[t.length];
        Arrays.fill(active, true);
        Aquifer aquifer = new Aquifer(
                grid, t, t, Fields.level(grid, 2e-4), Fields.level(grid, -100), Fields.level(grid, -200), active);
        SealingBed bed = new SealingBed(
                Fields.level(grid, 100), Fields.level(grid, 1e-6), Fields.level(grid, 3e-6), Fields.level(grid, 180));
        List<Bore> bores = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            double x = ASIDE * CELL * random.nextDouble();
            double y = ASIDE * CELL * random.nextDouble();
            bores.add(Fields.pumped("bore " + i, x, y, 0.1, Schedule.constant(700)));
        }
        return new FlowProblem(
                aquifer,
                withBed ? Optional.of(bed) : Optional.empty(),
                Fields.heldOnAllSides(grid, 200).subList(0, 2),
                List.of(),
                List.of(new Spring("spring", 0.3 * ASIDE * CELL, 0.4 * ASIDE * CELL, 195, 50)),
                bores);
    }
}
