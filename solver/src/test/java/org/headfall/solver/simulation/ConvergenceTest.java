package org.headfall.solver.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.Recharge;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.schedule.Schedule;
import org.junit.jupiter.api.Test;

class ConvergenceTest {

    private static final double SIDE = 10_000;
    private static final double K = Math.PI / SIDE;

    /** T that grows along x; with {@code h = 100 + sin(kx) sin(ky)} the recharge below makes h the exact answer. */
    private static double transmissivity(double x) {
        return 100 * Math.exp(x / SIDE);
    }

    private static double recharge(double x, double y) {
        double slopeTerm = transmissivity(x) / SIDE * K * Math.cos(K * x) * Math.sin(K * y);
        return 2 * K * K * transmissivity(x) * Math.sin(K * x) * Math.sin(K * y) - slopeTerm;
    }

    private static double largestError(int cells) {
        Axis axis = Axis.uniform(0, SIDE / cells, cells);
        RectilinearGrid grid = new RectilinearGrid(axis, axis);
        int n = grid.cellCount();
        double[] t = new double[n];
        double[] rate = new double[n];
        Arrays.setAll(t, cell -> transmissivity(grid.centreX(cell)));
        Arrays.setAll(rate, cell -> recharge(grid.centreX(cell), grid.centreY(cell)));
        boolean[] active = new boolean[n];
        Arrays.fill(active, true);
        Aquifer aquifer = new Aquifer(
                grid, t, t, Fields.level(grid, 1e-4), Fields.level(grid, 0), Fields.level(grid, -10), active);
        FlowProblem problem = new FlowProblem(
                aquifer,
                Optional.empty(),
                Fields.heldOnAllSides(grid, 100),
                List.of(new Recharge("manufactured", rate, Schedule.constant(1))),
                List.of(),
                List.of());
        double[] head = new Simulation(problem, Settings.DEFAULT).steadyHead(0);
        double worst = 0;
        for (int cell = 0; cell < n; cell++) {
            double exact = 100 + Math.sin(K * grid.centreX(cell)) * Math.sin(K * grid.centreY(cell));
            worst = Math.max(worst, Math.abs(head[cell] - exact));
        }
        return worst;
    }

    /** Manufactured solution: the error falls with the square of the cell, rate 1.9 to 2.1. */
    @Test
    void headsConvergeWithSecondOrderInSpace() {
        double coarse = largestError(20);
        double middle = largestError(40);
        double fine = largestError(80);
        assertEquals(2, Math.log(coarse / middle) / Math.log(2), 0.1);
        assertEquals(2, Math.log(middle / fine) / Math.log(2), 0.1);
    }
}
