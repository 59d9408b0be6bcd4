package org.headfall.solver.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.headfall.solver.analytic.PumpedBore;
import org.headfall.solver.analytic.TheisSolution;
import org.headfall.solver.analytic.side.HalfPlaneSolution;
import org.headfall.solver.analytic.side.SideCondition;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.aquifer.Side;
import org.headfall.solver.aquifer.SideSegment;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.nearfield.CentreHeads;
import org.headfall.solver.schedule.Schedule;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Heads at the centres of the cells beside a side of fixed head, as maps show them, against Theis 1935 with an image well of
 * the other sign (Ferris and others 1962, USGS Water-Supply Paper 1536-E, image-well theory), to 0.5 % of the drawdown there.
 * Without {@link CentreHeads} the first row is off by up to 180 %.
 */
class HeadsBesideFixedHeadTest {
    private static final double T = 200;
    private static final double S = 2e-4;
    private static final double RADIUS = 0.1;
    private static final double RATE = 1000;
    private static final double DAY = 10;
    private static final double TOLERANCE = 0.005;
    private static final int ROWS = 3;
    private static final int ALONG = 6;

    /** From here on corrections fade and the grid does the more by itself. */
    private static final int CORRECTED_CELLS = 3;

    private static final double TOLERANCE_BEYOND = 0.015;

    /**
     * A bore beside the western side of a half plane.
     *
     * @param fromSide from the side, in cells
     * @param along from the middle of a cell, in cells
     * @param width width of cells (m)
     * @param height their height (m)
     */
    record Case(double fromSide, double along, double width, double height) {
        Bore bore() {
            return Fields.pumped("bore", fromSide * width, along * height, RADIUS, Schedule.constant(RATE));
        }

        FlowProblem problem() {
            double far = 4.5 * Math.sqrt(4 * T * DAY / S);
            RectilinearGrid grid = new RectilinearGrid(
                    Fields.fromSide(0, width, 20 * width, far), Fields.widening(height, 20 * height, far));
            OuterBoundary west =
                    new OuterBoundary.FixedHead("west", SideSegment.whole(Side.WEST, grid), Schedule.constant(0));
            return Fields.problem(Aquifer.homogeneous(grid, T, S), List.of(west), bore());
        }
    }

    static Stream<Case> cases() {
        List<Case> cases = new ArrayList<>();
        for (double fromSide : new double[] {0.1, 0.3, 0.5, 0.8, 1.3, 1.8}) {
            cases.add(new Case(fromSide, 0.3, 100, 100));
        }
        for (double fromSide : new double[] {0.4, 1.3}) {
            cases.add(new Case(fromSide, 0, 25, 25));
            cases.add(new Case(fromSide, -0.2, 400, 400));
            cases.add(new Case(fromSide, 0.1, 100, 150));
            cases.add(new Case(fromSide, 0.1, 150, 100));
        }
        return cases.stream();
    }

    @ParameterizedTest
    @MethodSource("cases")
    void headsAreThoseAtTheCentres(Case c) {
        assertTrue(c.problem().centreHeads().differ());
        check(c, TOLERANCE);
    }

    /** A bore beyond the first two cells has no image: the grid does nearly as well without, and nothing is put right. */
    @ParameterizedTest
    @ValueSource(doubles = {2.5, 3.5, 4.5, 6.5})
    void fartherOffTheGridCarriesTheImage(double fromSide) {
        Case c = new Case(fromSide, 0.3, 100, 100);
        assertFalse(c.problem().centreHeads().differ());
        check(c, 4 * TOLERANCE);
    }

    private static void check(Case c, double tolerance) {
        FlowProblem problem = c.problem();
        RectilinearGrid grid = problem.aquifer().grid();
        Bore bore = problem.bores().get(0);
        HalfPlaneSolution exact = new HalfPlaneSolution(new TheisSolution(T, S), SideCondition.FIXED_HEAD);
        PumpedBore pumped = new PumpedBore(bore.x(), bore.y(), RATE);
        CentreHeads centres = problem.centreHeads();
        try (Simulation simulation = new Simulation(problem, new Settings(1e-4, Double.POSITIVE_INFINITY, 1))) {
            simulation.run(Fields.level(grid, 0), 0, DAY, new double[] {DAY}, state -> {
                double[] head = centres.of(state.head(), state.boreRate());
                int middle = grid.row(grid.locate(bore.x(), bore.y()));
                for (int column = 0; column < ROWS; column++) {
                    for (int k = -ALONG; k <= ALONG; k++) {
                        int cell = grid.cell(column, middle + k);
                        if (cell != grid.locate(bore.x(), bore.y())) {
                            double share =
                                    Math.abs(k) <= CORRECTED_CELLS ? tolerance : Math.max(tolerance, TOLERANCE_BEYOND);
                            double drawdown = exact.drawdown(pumped, grid.centreX(cell), grid.centreY(cell), DAY);
                            assertEquals(
                                    drawdown,
                                    -head[cell],
                                    share * drawdown,
                                    "row " + (column + 1) + ", " + k + " cells along");
                        }
                    }
                }
            });
        }
    }
}
