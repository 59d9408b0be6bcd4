package org.headfall.solver.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.headfall.solver.analytic.DrawdownField;
import org.headfall.solver.analytic.PumpedBore;
import org.headfall.solver.analytic.TheisSolution;
import org.headfall.solver.analytic.side.HalfPlaneSolution;
import org.headfall.solver.analytic.side.QuarterPlaneSolution;
import org.headfall.solver.analytic.side.SideCondition;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.aquifer.Side;
import org.headfall.solver.aquifer.SideSegment;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.nearfield.NearField;
import org.headfall.solver.nearfield.ObservedHead;
import org.headfall.solver.schedule.Schedule;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Bores in the cells along straight sides against Theis 1935 with image wells (Ferris and others 1962, USGS Water-Supply
 * Paper 1536-E, image-well theory), to 0.5 %: drawdown in the bore, in another near it and at a point.
 */
class BoresBesideSidesTest {
    private static final double T = 200;
    private static final double S = 2e-4;
    private static final double CELL = 100;
    private static final double RADIUS = 0.1;
    private static final double RATE = 1000;
    private static final double TOLERANCE = 0.005;
    private static final TheisSolution THEIS = new TheisSolution(T, S);
    private static final double[] DAYS = {1, 30};

    /**
     * A bore beside sides at x = 0 and perhaps y = 0.
     *
     * @param x from the western side, in cells
     * @param y from the southern side or from the middle, in cells
     * @param west what holds at x = 0
     * @param corner what holds at y = 0, or nothing
     * @param outside cells outside the aquifer behind the western side
     */
    record Case(double x, double y, SideCondition west, List<SideCondition> corner, int outside) {
        RectilinearGrid grid() {
            double far = 4.5 * Math.sqrt(4 * T * DAYS[1] / S);
            return new RectilinearGrid(
                    Fields.fromSide(outside, CELL, 2000, far),
                    corner.isEmpty() ? Fields.widening(CELL, 2000, far) : Fields.fromSide(0, CELL, 2000, far));
        }

        Aquifer aquifer() {
            RectilinearGrid grid = grid();
            Aquifer whole = Aquifer.homogeneous(grid, T, S);
            boolean[] active = new boolean[grid.cellCount()];
            for (int cell = 0; cell < active.length; cell++) {
                active[cell] = grid.column(cell) >= outside;
            }
            return new Aquifer(
                    grid,
                    whole.transmissivityX(),
                    whole.transmissivityY(),
                    whole.storativity(),
                    whole.top(),
                    whole.bottom(),
                    active);
        }

        FlowProblem problem(Bore... bores) {
            Aquifer aquifer = aquifer();
            List<OuterBoundary> boundaries = new ArrayList<>();
            addIfHeld(west, Side.WEST, aquifer.grid(), boundaries);
            corner.forEach(condition -> addIfHeld(condition, Side.SOUTH, aquifer.grid(), boundaries));
            return Fields.problem(aquifer, boundaries, bores);
        }

        private static void addIfHeld(
                SideCondition condition, Side side, RectilinearGrid grid, List<OuterBoundary> boundaries) {
            if (condition == SideCondition.FIXED_HEAD) {
                boundaries.add(new OuterBoundary.FixedHead(
                        side.toString(), SideSegment.whole(side, grid), Schedule.constant(0)));
            }
        }

        /** A bore beyond the first two cells of a side of fixed head has no image, which a point at that side would need. */
        double pointTolerance() {
            boolean withoutImage = west == SideCondition.FIXED_HEAD && x > 2;
            return (withoutImage ? 4 : 1) * TOLERANCE;
        }

        DrawdownField exact() {
            return corner.isEmpty()
                    ? new HalfPlaneSolution(THEIS, west)
                    : new QuarterPlaneSolution(THEIS, west, corner.get(0));
        }
    }

    static Stream<Case> cases() {
        List<Case> cases = new ArrayList<>();
        for (double x : new double[] {0.02, 0.05}) {
            cases.add(new Case(x, 0.3, SideCondition.NO_FLOW, List.of(), 0));
        }
        for (SideCondition condition : SideCondition.values()) {
            for (double x : new double[] {0.1, 0.2, 0.5, 0.8, 1.3, 2.5, 3.9, 4.1}) {
                cases.add(new Case(x, 0.3, condition, List.of(), 0));
            }
            for (SideCondition other : SideCondition.values()) {
                cases.add(new Case(0.3, 0.15, condition, List.of(other), 0));
                cases.add(new Case(1.6, 0.4, condition, List.of(other), 0));
            }
        }
        cases.add(new Case(0.1, 0.3, SideCondition.NO_FLOW, List.of(), 3));
        return cases.stream();
    }

    @ParameterizedTest
    @MethodSource("cases")
    void drawdownIsThatOfImages(Case c) {
        Bore bore = bore("bore", c.x() * CELL, c.y() * CELL);
        Bore near = bore("near", 0.4 * CELL, (c.y() + 0.7) * CELL);
        double[] point = {0.3 * CELL, (c.y() + 1.6) * CELL};
        FlowProblem problem = c.problem(bore, near);
        List<NearField> fields = problem.bores().stream()
                .map(one -> problem.nearField(one.x(), one.y(), RADIUS))
                .toList();
        ObservedHead observed = new ObservedHead(problem.aquifer(), point[0], point[1], fields);
        for (NearField field : fields) {
            assertEquals(1, Arrays.stream(field.weights().weights()).sum(), 1e-12);
        }
        Settings settings = new Settings(1e-4, Double.POSITIVE_INFINITY, 1);
        try (Simulation simulation = new Simulation(problem, settings)) {
            simulation.run(Fields.level(problem.aquifer().grid(), 0), 0, DAYS[1], DAYS, state -> {
                for (int i = 0; i < 2; i++) {
                    Bore at = problem.bores().get(i);
                    // At the wall: a radius from the axis, along the side.
                    double exact = drawdown(c, problem, at.x(), at.y() + RADIUS, state.day());
                    assertEquals(
                            exact, -state.boreWallHead()[i], TOLERANCE * exact, at.name() + ", day " + state.day());
                }
                double exact = drawdown(c, problem, point[0], point[1], state.day());
                double found = -observed.at(state.head(), new double[] {RATE, RATE});
                assertEquals(exact, found, c.pointTolerance() * exact, "point, day " + state.day());
                assertTrue(state.balance().relativeDiscrepancy() < 1e-9);
            });
        }
    }

    /** So near a side of fixed head the bore is seen without its image; it must still be a bore, and say so. */
    @Test
    void aBoreAtASideOfFixedHeadIsLeftUnmirrored() {
        Case c = new Case(0.01, 0.3, SideCondition.FIXED_HEAD, List.of(), 0);
        FlowProblem problem = c.problem(bore("bore", c.x() * CELL, c.y() * CELL));
        NearField field = problem.nearField(c.x() * CELL, c.y() * CELL, RADIUS);
        assertEquals(Set.of(Side.WEST), field.unmirroredSides().keySet());
        assertTrue(field.unresolvedAtWall() > 0);
    }

    private static double drawdown(Case c, FlowProblem problem, double x, double y, double day) {
        return problem.bores().stream()
                .mapToDouble(by -> c.exact().drawdown(new PumpedBore(by.x(), by.y(), RATE), x, y, day))
                .sum();
    }

    private static Bore bore(String name, double x, double y) {
        return Fields.pumped(name, x, y, RADIUS, Schedule.constant(RATE));
    }
}
