package org.headfall.validation.property;

import java.util.ArrayList;
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
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.bore.WellLoss;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.schedule.Schedule;
import org.headfall.solver.simulation.Settings;
import org.headfall.solver.simulation.Simulation;

/** Random fields of a few hundred cells with two to four bores, and the drawdowns they end in. */
final class RandomFields {

    static final double DAYS = 200;

    private static final double CELL = 500;

    private RandomFields() {}

    /** Grid of random size, 20 to 32 cells aside. */
    static RectilinearGrid grid(Random random) {
        return new RectilinearGrid(
                Axis.uniform(0, CELL, 20 + random.nextInt(12)), Axis.uniform(0, CELL, 20 + random.nextInt(12)));
    }

    /** T from cell to cell over about two decades, anisotropic up to a factor of four either way. */
    static Aquifer aquifer(RectilinearGrid grid, Random random) {
        int cells = grid.cellCount();
        double[] tx = new double[cells];
        double[] ty = new double[cells];
        double[] s = new double[cells];
        double stretch = Math.pow(4, 2 * random.nextDouble() - 1);
        for (int cell = 0; cell < cells; cell++) {
            tx[cell] = 150 * Math.exp(random.nextGaussian());
            ty[cell] = tx[cell] * stretch;
            s[cell] = 2e-4 * Math.exp(0.5 * random.nextGaussian());
        }
        boolean[] active = new boolean[cells];
        Arrays.fill(active, true);
        return new Aquifer(grid, tx, ty, s, filled(cells, -1000), filled(cells, -1100), active);
    }

    /** Heads of zero held in the west, no flow elsewhere. */
    static List<OuterBoundary> rim(RectilinearGrid grid) {
        return List.of(new OuterBoundary.FixedHead("west", SideSegment.whole(Side.WEST, grid), Schedule.constant(0)));
    }

    /** Bed that leaks from a level of zero, with or without storage. */
    static SealingBed bed(RectilinearGrid grid, Random random) {
        int cells = grid.cellCount();
        double[] conductivity = new double[cells];
        for (int cell = 0; cell < cells; cell++) {
            conductivity[cell] = 1e-5 * Math.exp(random.nextGaussian());
        }
        double storage = random.nextBoolean() ? 1e-6 : 0;
        return new SealingBed(filled(cells, 60), conductivity, filled(cells, storage), filled(cells, 0));
    }

    static FlowProblem problem(Random random) {
        RectilinearGrid grid = grid(random);
        Aquifer aquifer = aquifer(grid, random);
        Optional<SealingBed> bed = random.nextBoolean() ? Optional.of(bed(grid, random)) : Optional.empty();
        return new FlowProblem(aquifer, bed, rim(grid), List.of(), List.of(), bores(grid, random));
    }

    /** Two to four bores anywhere but in the outer three cells. */
    static List<Bore> bores(RectilinearGrid grid, Random random) {
        List<Bore> bores = new ArrayList<>();
        int count = 2 + random.nextInt(3);
        for (int i = 0; i < count; i++) {
            bores.add(pumped(
                    "B" + i, inside(grid.x(), random), inside(grid.y(), random), 500 + 2500 * random.nextDouble()));
        }
        return bores;
    }

    private static double inside(Axis axis, Random random) {
        double margin = 3 * CELL;
        return axis.start() + margin + (axis.end() - axis.start() - 2 * margin) * random.nextDouble();
    }

    static Bore pumped(String name, double x, double y, double rate) {
        Operation operation = new Operation.PumpedRate(Schedule.constant(rate), OptionalDouble.empty());
        return new Bore(name, x, y, 0.1, WellLoss.NONE, List.of(new OperatingPhase(0, operation)));
    }

    /** The same bore at another rate. */
    static Bore withRate(Bore bore, double rate) {
        return pumped(bore.name(), bore.x(), bore.y(), rate);
    }

    static double[] filled(int cells, double value) {
        double[] field = new double[cells];
        Arrays.fill(field, value);
        return field;
    }

    /** Runs from heads of zero at an accuracy. */
    static Ending run(FlowProblem problem, double accuracy, double days) {
        return run(problem, filled(problem.aquifer().grid().cellCount(), 0), 0, days, accuracy);
    }

    /** Runs from given heads at an accuracy. */
    static Ending run(FlowProblem problem, double[] start, double from, double to, double accuracy) {
        Ending[] last = new Ending[1];
        try (Simulation simulation = new Simulation(problem, new Settings(accuracy, Double.POSITIVE_INFINITY, 1))) {
            simulation.run(
                    start,
                    from,
                    to,
                    new double[] {to},
                    snapshot -> last[0] = new Ending(
                            snapshot.head().clone(),
                            snapshot.boreWallHead().clone(),
                            snapshot.balance().relativeDiscrepancy(),
                            snapshot.balance().largestStepDiscrepancy()));
        }
        return last[0];
    }

    /**
     * State at the end of a run.
     *
     * @param head head of each cell (m)
     * @param wallHead head at the wall of each bore (m)
     * @param discrepancy what the balance of the run fails to account for, over throughput (-)
     * @param largestStepDiscrepancy the same for the worst step (-)
     */
    @SuppressWarnings("ArrayRecordComponent") // results that are read once, never compared
    record Ending(double[] head, double[] wallHead, double discrepancy, double largestStepDiscrepancy) {}
}
