package org.headfall.solver.response;

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

/**
 * A field drawn at random: transmissivity in waves, a sealing bed that stores, a fixed and a far head, bores of which most
 * change their rates twice a year, and springs. Every second bore was operated before the start.
 */
final class RandomWellField {

    private static final int SIDE = 32;
    private static final double CELL = 1500;
    private static final int BORES = 8;
    private static final int HALF_YEARS = 24;

    private final Random random;
    private final RectilinearGrid grid = new RectilinearGrid(Axis.uniform(0, CELL, SIDE), Axis.uniform(0, CELL, SIDE));
    private final FlowProblem problem;

    RandomWellField(long seed) {
        random = new Random(seed);
        double[] t = transmissivity();
        boolean[] active = new boolean[t.length];
        Arrays.fill(active, true);
        Aquifer aquifer =
                new Aquifer(grid, t, t, level(1e-4 * Math.pow(5, random.nextDouble())), level(0), level(-50), active);
        SealingBed bed = new SealingBed(
                level(60 + 80 * random.nextDouble()),
                level(5e-7 * Math.pow(10, random.nextDouble())),
                level(2e-6),
                level(105));
        List<OuterBoundary> boundaries = List.of(
                new OuterBoundary.FixedHead("east", SideSegment.whole(Side.EAST, grid), Schedule.constant(130)),
                new OuterBoundary.FarHead("west", SideSegment.whole(Side.WEST, grid), Schedule.constant(100), 60_000));
        problem = new FlowProblem(aquifer, Optional.of(bed), boundaries, List.of(), springs(), bores());
    }

    private double[] level(double value) {
        return InterferenceTest.level(grid.cellCount(), value);
    }

    private double[] transmissivity() {
        double along = 0.5 * random.nextGaussian();
        double across = 0.5 * random.nextGaussian();
        double noise = 0.3 * random.nextDouble();
        double[] t = new double[grid.cellCount()];
        for (int cell = 0; cell < t.length; cell++) {
            int row = cell / SIDE;
            double wave = Math.cos(along * (cell % SIDE)) + Math.cos(across * row);
            t[cell] = 300 * Math.exp(0.5 * wave + noise * random.nextGaussian());
        }
        return t;
    }

    private double place() {
        return CELL * SIDE * (0.15 + 0.7 * random.nextDouble());
    }

    private List<Spring> springs() {
        List<Spring> springs = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            springs.add(new Spring("spring " + i, place(), place(), 106, 60 + 60 * random.nextDouble()));
        }
        return springs;
    }

    private List<Bore> bores() {
        List<Bore> bores = new ArrayList<>();
        for (int i = 0; i < BORES; i++) {
            bores.add(new Bore(
                    "bore " + i,
                    place(),
                    place(),
                    0.1,
                    new WellLoss(0, 1e-7),
                    List.of(new OperatingPhase(
                            0, i == 0 ? new Operation.FreeFlow(100) : seasonal(500 + 1500 * random.nextDouble())))));
        }
        return bores;
    }

    private static Operation seasonal(double mean) {
        double[] days = new double[HALF_YEARS];
        double[] rates = new double[HALF_YEARS];
        for (int k = 0; k < HALF_YEARS; k++) {
            days[k] = 182.625 * k;
            rates[k] = mean * (k % 2 == 0 ? 1.4 : 0.6);
        }
        return new Operation.PumpedRate(new StepSchedule(days, rates), OptionalDouble.empty());
    }

    FlowProblem problem() {
        return problem;
    }

    /** The problem that the start is at rest with. */
    FlowProblem atRest() {
        List<Bore> bores = new ArrayList<>(problem.bores());
        for (int i = 1; i < BORES; i += 2) {
            bores.set(i, bores.get(i).withPhases(List.of()));
        }
        return problem.withBores(bores);
    }
}
