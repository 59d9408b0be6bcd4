package org.headfall.validation.benchmark;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
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
import org.headfall.solver.schedule.LinearSchedule;
import org.headfall.solver.schedule.Schedule;

/**
 * A bore field of any size for timing whole runs: the benchmark's transmissivity on square cells of 100 m, a sealing bed
 * with storage, a head held along the west, and fourteen bores whose rates follow the seasons in straight lines from
 * month to month. Everything in it is invented.
 */
public final class FieldProblem {
    private static final double CELL = 100;
    private static final int BORES = 14;
    private static final double MONTH = 365.25 / 12;
    private static final double MEAN_RATE = 1500;
    private static final double SEASONAL_SHARE = 0.5;
    private static final double START_HEAD = 150;

    private FieldProblem() {}

    /**
     * Makes the problem.
     *
     * @param cells number of cells wanted; the grid is the square of at most as many
     * @param years years that rates are given for
     * @return the problem
     */
    public static FlowProblem of(int cells, int years) {
        int n = (int) Math.sqrt(cells);
        Axis axis = Axis.uniform(0, CELL, n);
        RectilinearGrid grid = new RectilinearGrid(axis, axis);
        double[] t = new TransmissivityField().onGrid(n, n);
        int count = grid.cellCount();
        boolean[] active = new boolean[count];
        Arrays.fill(active, true);
        Aquifer aquifer =
                new Aquifer(grid, t, t, filled(count, 2e-4), filled(count, -400), filled(count, -500), active);
        SealingBed bed =
                new SealingBed(filled(count, 140), filled(count, 3e-6), filled(count, 2e-6), filled(count, START_HEAD));
        OuterBoundary west = new OuterBoundary.FixedHead(
                "west", new SideSegment(Side.WEST, 0, n - 1), Schedule.constant(START_HEAD));
        return new FlowProblem(aquifer, Optional.of(bed), List.of(west), List.of(), List.of(), bores(n, years));
    }

    /** Heads before anybody takes water (m above datum). */
    static double[] startHead(FlowProblem problem) {
        return filled(problem.aquifer().grid().cellCount(), START_HEAD);
    }

    private static double[] filled(int count, double value) {
        double[] values = new double[count];
        Arrays.fill(values, value);
        return values;
    }

    /** Two rows of seven in the middle third, each somewhere else in its cell. */
    private static List<Bore> bores(int n, int years) {
        List<Bore> bores = new ArrayList<>();
        double side = CELL * n;
        for (int i = 0; i < BORES; i++) {
            double x = side * (0.35 + 0.05 * (i % 7)) + 7 * i;
            double y = side * (i < 7 ? 0.45 : 0.55) + 5 * i;
            Operation pumped = new Operation.PumpedRate(seasonal(i, years), OptionalDouble.empty());
            bores.add(new Bore("bore " + (i + 1), x, y, 0.1, WellLoss.NONE, List.of(new OperatingPhase(0, pumped))));
        }
        return bores;
    }

    /** A rate that rises and falls with the year. */
    private static Schedule seasonal(int bore, int years) {
        int months = 12 * years;
        double[] days =
                IntStream.rangeClosed(0, months).mapToDouble(k -> k * MONTH).toArray();
        double[] rates = IntStream.rangeClosed(0, months)
                .mapToDouble(month ->
                        MEAN_RATE * (1 + SEASONAL_SHARE * Math.sin(2 * Math.PI * (month + bore % 3) / 12)))
                .toArray();
        return new LinearSchedule(days, rates);
    }

    /** The end of each month (d). */
    static double[] recordDays(int years) {
        return IntStream.rangeClosed(1, 12 * years).mapToDouble(k -> k * MONTH).toArray();
    }
}
