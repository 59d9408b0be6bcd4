package org.headfall.validation.independent;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.aquifer.Recharge;
import org.headfall.solver.aquifer.Side;
import org.headfall.solver.aquifer.SideSegment;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.schedule.LinearSchedule;
import org.headfall.solver.schedule.Schedule;
import org.headfall.solver.simulation.Settings;
import org.headfall.solver.simulation.Simulation;
import org.headfall.validation.check.Comparison;
import org.headfall.validation.check.Findings;
import org.headfall.validation.check.Part;
import org.headfall.validation.check.Source;
import org.headfall.validation.check.Standing;
import org.headfall.validation.check.Tolerance;
import org.headfall.validation.check.ValidationCase;

/**
 * Order of convergence on T that varies over two decades, from three runs each twice as fine as the one before: the order
 * is the logarithm to base two of the ratio of the two differences.
 */
final class RichardsonRates {

    private static final long SEED = 1911;
    private static final double SIDE = 20_000;

    private static final Source RICHARDSON = new Source(
            "Richardson",
            1911,
            "Philosophical Transactions of the Royal Society A 210, 307-357",
            "deferred approach to the limit",
            Standing.MEMORY);

    private RichardsonRates() {}

    static ValidationCase space() {
        return new ValidationCase(
                "rate-space",
                "Heads converge with the square of the cell where T varies over two decades",
                Part.INDEPENDENT,
                List.of(RICHARDSON),
                "Harmonic face conductances and sides at half a cell are of second order on smooth T that varies.",
                "T that jumps, and the neighbourhood of bores.",
                ValidationCase.Pace.FAST,
                findings -> {
                    double[][] heads = {coarse(40, 40), coarse(80, 40), coarse(160, 40), coarse(320, 40)};
                    compareOrders(heads, "cells", findings);
                });
    }

    private static void compareOrders(double[][] results, String what, Findings findings) {
        for (int i = 0; i + 2 < results.length; i++) {
            double order = Math.log(distance(results[i], results[i + 1]) / distance(results[i + 1], results[i + 2]))
                    / Math.log(2);
            findings.compare(Comparison.withFormula(
                    "order from " + what + " halved " + (i + 1) + " and " + (i + 2) + " times",
                    "-",
                    2,
                    order,
                    new Tolerance(0.15, "terms of the next order on grids of this size")));
        }
        findings.note("Seed " + SEED + "; differences " + distance(results[0], results[1]) + ", "
                + distance(results[1], results[2]) + " m (root mean square)");
    }

    private static double distance(double[] one, double[] other) {
        double sum = 0;
        for (int i = 0; i < one.length; i++) {
            sum += (one[i] - other[i]) * (one[i] - other[i]);
        }
        return Math.sqrt(sum / one.length);
    }

    /** Steady heads on a grid, averaged over the cells of a coarse one. */
    private static double[] coarse(int cellsAside, int coarseAside) {
        double[] head;
        try (Simulation simulation =
                new Simulation(problem(cellsAside, Schedule.constant(100)), new Settings(1e-9, 1e9, 1))) {
            head = simulation.steadyHead(0);
        }
        int factor = cellsAside / coarseAside;
        double[] means = new double[coarseAside * coarseAside];
        for (int cell = 0; cell < head.length; cell++) {
            int column = cell % cellsAside / factor;
            int row = cell / cellsAside / factor;
            means[row * coarseAside + column] += head[cell] / (factor * factor);
        }
        return means;
    }

    static ValidationCase time() {
        return new ValidationCase(
                "rate-time",
                "Heads converge with the square of the step where T varies over two decades",
                Part.INDEPENDENT,
                List.of(RICHARDSON),
                "The time stepping is of second order while a boundary head moves.",
                "Jumps of rates, at which steps begin anew.",
                ValidationCase.Pace.FAST,
                findings -> {
                    double[][] heads = {stepped(40), stepped(80), stepped(160), stepped(320)};
                    compareOrders(heads, "steps", findings);
                });
    }

    /** Heads after a year whose boundary head rises and falls slowly, in a number of equal steps. */
    private static double[] stepped(int steps) {
        double year = 365;
        List<Double> days = new ArrayList<>();
        for (int i = 0; i <= steps; i++) {
            days.add(i * year / steps);
        }
        // The head of the side runs straight, which the steps follow without error of their own.
        Schedule rising = new LinearSchedule(new double[] {0, year}, new double[] {100, 140});
        FlowProblem problem = problem(24, rising);
        double[] record = days.stream().skip(1).mapToDouble(Double::doubleValue).toArray();
        try (Simulation still = new Simulation(problem(24, Schedule.constant(100)), new Settings(1e-9, 1e9, 1));
                Simulation moving = new Simulation(problem, new Settings(1e9, year / steps, 1))) {
            return moving.run(still.steadyHead(0), 0, year, record, snapshot -> {})
                    .head();
        }
    }

    private static FlowProblem problem(int cellsAside, Schedule westernHead) {
        Axis axis = Axis.uniform(0, SIDE / cellsAside, cellsAside);
        RectilinearGrid grid = new RectilinearGrid(axis, axis);
        RandomField field = new RandomField(new Random(SEED), 8000);
        int cells = grid.cellCount();
        double[] t = new double[cells];
        double[] rate = new double[cells];
        for (int cell = 0; cell < cells; cell++) {
            double x = grid.centreX(cell);
            double y = grid.centreY(cell);
            t[cell] = 100 * Math.exp(1.1 * field.at(x, y));
            rate[cell] = 1e-4 * Math.sin(Math.PI * x / SIDE) * Math.sin(Math.PI * y / SIDE);
        }
        boolean[] active = new boolean[cells];
        Arrays.fill(active, true);
        List<OuterBoundary> rim = List.of(
                new OuterBoundary.FixedHead("west", SideSegment.whole(Side.WEST, grid), westernHead),
                new OuterBoundary.FixedHead("east", SideSegment.whole(Side.EAST, grid), Schedule.constant(80)));
        Aquifer aquifer =
                new Aquifer(grid, t, t, filled(cells, 0.02), filled(cells, -100), filled(cells, -200), active);
        return new FlowProblem(
                aquifer,
                Optional.empty(),
                rim,
                List.of(new Recharge("rain", rate, Schedule.constant(1))),
                List.of(),
                List.of());
    }

    private static double[] filled(int cells, double value) {
        double[] field = new double[cells];
        Arrays.fill(field, value);
        return field;
    }
}
