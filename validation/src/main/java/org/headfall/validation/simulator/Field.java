package org.headfall.validation.simulator;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleBiFunction;
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
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.schedule.Schedule;
import org.headfall.solver.simulation.Settings;
import org.headfall.solver.simulation.Simulation;

/** Aquifers, bores and boundaries as the cases need them, and runs at default accuracy from a level start. */
final class Field {

    /** Radius of every bore (m). */
    static final double RADIUS = 0.1;

    private Field() {}

    static double[] filled(RectilinearGrid grid, double value) {
        double[] field = new double[grid.cellCount()];
        Arrays.fill(field, value);
        return field;
    }

    /** Aquifer whose properties depend on place; T the same in both directions. */
    static Aquifer aquifer(
            RectilinearGrid grid,
            ToDoubleBiFunction<Double, Double> transmissivity,
            ToDoubleBiFunction<Double, Double> storativity) {
        double[] t = new double[grid.cellCount()];
        double[] s = new double[grid.cellCount()];
        for (int cell = 0; cell < t.length; cell++) {
            t[cell] = transmissivity.applyAsDouble(grid.centreX(cell), grid.centreY(cell));
            s[cell] = storativity.applyAsDouble(grid.centreX(cell), grid.centreY(cell));
        }
        return new Aquifer(grid, t, t, s, filled(grid, -1000), filled(grid, -1100), active(grid));
    }

    /** Aquifer with another T along each axis. */
    static Aquifer anisotropic(RectilinearGrid grid, double alongX, double alongY, double storativity) {
        return new Aquifer(
                grid,
                filled(grid, alongX),
                filled(grid, alongY),
                filled(grid, storativity),
                filled(grid, -1000),
                filled(grid, -1100),
                active(grid));
    }

    private static boolean[] active(RectilinearGrid grid) {
        boolean[] active = new boolean[grid.cellCount()];
        Arrays.fill(active, true);
        return active;
    }

    static Bore pumped(String name, double x, double y, Schedule rate) {
        return bore(name, x, y, new Operation.PumpedRate(rate, OptionalDouble.empty()));
    }

    static Bore bore(String name, double x, double y, Operation operation) {
        return new Bore(name, x, y, RADIUS, WellLoss.NONE, List.of(new OperatingPhase(0, operation)));
    }

    static SealingBed bed(RectilinearGrid grid, double thickness, double conductivity, double specificStorage) {
        return new SealingBed(
                filled(grid, thickness), filled(grid, conductivity), filled(grid, specificStorage), filled(grid, 0));
    }

    static OuterBoundary held(String name, Side side, RectilinearGrid grid, Schedule head) {
        return new OuterBoundary.FixedHead(name, SideSegment.whole(side, grid), head);
    }

    /** Heads along the whole rim, face by face. */
    static List<OuterBoundary> rim(RectilinearGrid grid, ToDoubleBiFunction<Double, Double> head) {
        List<OuterBoundary> boundaries = new ArrayList<>();
        for (Side side : Side.values()) {
            int length = SideSegment.whole(side, grid).length();
            for (int along = 0; along < length; along++) {
                SideSegment face = new SideSegment(side, along, along);
                int cell = face.cell(grid, 0);
                double x = side.countedByRow()
                        ? side == Side.WEST ? grid.x().start() : grid.x().end()
                        : grid.centreX(cell);
                double y = side.countedByRow()
                        ? grid.centreY(cell)
                        : side == Side.SOUTH ? grid.y().start() : grid.y().end();
                boundaries.add(new OuterBoundary.FixedHead(
                        side + " " + along, face, Schedule.constant(head.applyAsDouble(x, y))));
            }
        }
        return boundaries;
    }

    static FlowProblem problem(Aquifer aquifer, Optional<SealingBed> bed, List<OuterBoundary> rim, Bore... bores) {
        return new FlowProblem(aquifer, bed, rim, List.of(), List.of(), List.of(bores));
    }

    /** Runs from heads of zero. */
    static List<State> run(FlowProblem problem, double... days) {
        return run(problem, filled(problem.aquifer().grid(), 0), days);
    }

    /** Runs from given heads. */
    static List<State> run(FlowProblem problem, double[] start, double... days) {
        List<State> states = new ArrayList<>();
        try (Simulation simulation = new Simulation(problem, Settings.DEFAULT)) {
            simulation.run(start, 0, days[days.length - 1], days, snapshot -> states.add(State.of(snapshot)));
        }
        return states;
    }

    /** Heads in steady state. */
    static double[] steady(FlowProblem problem) {
        try (Simulation simulation = new Simulation(problem, Settings.DEFAULT)) {
            return simulation.steadyHead(0);
        }
    }

    /** Days in equal ratios. */
    static double[] days(double first, double last, int count) {
        double[] days = new double[count];
        for (int i = 0; i < count; i++) {
            days[i] = first * Math.pow(last / first, i / (count - 1.0));
        }
        return days;
    }

    /** Days in equal steps. */
    static double[] evenDays(double first, double last, int count) {
        double[] days = new double[count];
        for (int i = 0; i < count; i++) {
            days[i] = first + (last - first) * i / (count - 1.0);
        }
        return days;
    }
}
