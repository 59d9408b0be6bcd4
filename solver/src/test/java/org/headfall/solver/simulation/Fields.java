package org.headfall.solver.simulation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.aquifer.Side;
import org.headfall.solver.aquifer.SideSegment;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.bore.WellLoss;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.grid.RefinedAxis;
import org.headfall.solver.schedule.Schedule;
import org.headfall.solver.schedule.StepSchedule;

/** Bores and square aquifers that the tests of this package share. */
final class Fields {

    private Fields() {}

    /** Square of the given half width around the origin, refined there. */
    static RectilinearGrid refinedSquare(double halfWidth, double coarse, double fine) {
        Axis axis = new RefinedAxis(coarse, fine, 1.15).between(-halfWidth, halfWidth, 0);
        return new RectilinearGrid(axis, axis);
    }

    /** Cells of one width from the origin to {@code even} on either side, then each wider by 15 % out to {@code far}. */
    static Axis widening(double width, double even, double far) {
        List<Double> half = new ArrayList<>(List.of(0.5 * width));
        double step = width;
        while (half.get(half.size() - 1) < far) {
            double last = half.get(half.size() - 1);
            step = last < even ? width : Math.max(width, Math.min(1.15 * step, far / 20));
            half.add(last + step);
        }
        int n = half.size();
        double[] edges = new double[2 * n];
        for (int i = 0; i < n; i++) {
            edges[n + i] = half.get(i);
            edges[n - 1 - i] = -half.get(i);
        }
        return Axis.ofEdges(edges);
    }

    /** Some cells outside of zero, cells of one width out to {@code even}, then each wider by 15 % out to {@code far}. */
    static Axis fromSide(int outside, double width, double even, double far) {
        List<Double> edges = new ArrayList<>();
        for (int i = -outside; i <= Math.round(even / width); i++) {
            edges.add(i * width);
        }
        double step = width;
        while (edges.get(edges.size() - 1) < far) {
            step *= 1.15;
            edges.add(edges.get(edges.size() - 1) + step);
        }
        return Axis.ofEdges(edges.stream().mapToDouble(Double::doubleValue).toArray());
    }

    static Bore pumped(String name, double x, double y, double radius, Schedule rate) {
        Operation operation = new Operation.PumpedRate(rate, OptionalDouble.empty());
        return new Bore(name, x, y, radius, WellLoss.NONE, List.of(new OperatingPhase(0, operation)));
    }

    /** Rate from day 0 to a day, then nothing. */
    static Schedule pumpedUntil(double day, double rate) {
        return new StepSchedule(new double[] {0, day}, new double[] {rate, 0});
    }

    static List<OuterBoundary> heldOnAllSides(RectilinearGrid grid, double head) {
        List<OuterBoundary> boundaries = new ArrayList<>();
        for (Side side : Side.values()) {
            boundaries.add(new OuterBoundary.FixedHead(
                    side.toString(), SideSegment.whole(side, grid), Schedule.constant(head)));
        }
        return boundaries;
    }

    static FlowProblem problem(Aquifer aquifer, List<OuterBoundary> boundaries, Bore... bores) {
        return new FlowProblem(aquifer, Optional.empty(), boundaries, List.of(), List.of(), List.of(bores));
    }

    static double[] level(RectilinearGrid grid, double head) {
        double[] field = new double[grid.cellCount()];
        Arrays.fill(field, head);
        return field;
    }
}
