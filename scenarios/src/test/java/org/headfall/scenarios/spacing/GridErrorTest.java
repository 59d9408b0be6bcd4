package org.headfall.scenarios.spacing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.headfall.scenarios.doubts.CoarserProblem;
import org.headfall.scenarios.scenario.BoreSpecification.WellLossSpecification;
import org.headfall.scenarios.scenario.SpacingSpecification;
import org.headfall.scenarios.scenario.SpacingSpecification.Layout;
import org.headfall.scenarios.scenario.SpacingSpecification.Prices;
import org.headfall.scenarios.spatial.Position;
import org.headfall.solver.analytic.function.WellFunction;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a comparison of layouts says of the error of its grid, and which layouts it leaves out. */
class GridErrorTest {

    private static final double T = 200;
    private static final double S = 1e-3;
    private static final double RADIUS = 0.1;
    private static final double DAYS = 3650;
    private static final double SIDE = 300_000;

    private static SpacingSpecification spacing(List<Layout> layouts, List<Integer> counts, Position at) {
        return new SpacingSpecification(
                at,
                layouts,
                counts,
                50,
                20_000,
                6,
                3000,
                60,
                DAYS,
                RADIUS,
                new WellLossSpecification(0, 0, 2),
                0,
                0.6,
                new Prices(0.3, 150, 250_000, 30, 0.05));
    }

    private static double theis(double distance) {
        double r = Math.max(distance, RADIUS);
        return WellFunction.of(r * r * S / (4 * T * DAYS)) / (4 * Math.PI * T);
    }

    /**
     * Theis (1935), Transactions of the American Geophysical Union 16, 519-524, in an aquifer so wide that its sides are not felt:
     * the response by distance is no farther off than is stated, with the bore anywhere in cells of 2.5 and 5 km. Straight over
     * the logarithm of the distance within three cells it was 1.7 % off.
     */
    @ParameterizedTest
    @CsvSource({"2500, 0.5", "2500, 0.05", "5000, 0.5", "5000, 0.25", "5000, 0.05"})
    void theStatedErrorCoversThatOfTheGrid(double cell, double placeInCell) {
        int n = (int) (SIDE / cell);
        RectilinearGrid grid = new RectilinearGrid(Axis.uniform(0, cell, n), Axis.uniform(0, cell, n));
        FlowProblem problem =
                new FlowProblem(aquifer(grid), Optional.empty(), List.of(), List.of(), List.of(), List.of());
        int middle = n / 2;
        double x = (middle + placeInCell) * cell;
        SpacingSpecification spacing = spacing(List.of(Layout.LINE), List.of(2), new Position(x, x));
        GriddedResponse response = new GriddedResponse(
                SpacingComparison.radial(problem, spacing, 1),
                Optional.of(SpacingComparison.radial(CoarserProblem.of(problem).problem(), spacing, 1)));
        for (double distance :
                new double[] {0, 10, 50, 200, 1000, 2000, 3000, 5000, 8000, 12_000, 15_000, 20_000, 30_000}) {
            double error = Math.abs(response.response().applyAsDouble(distance) / theis(distance) - 1);
            double stated = response.relativeError(distance);
            assertTrue(error <= stated, "at " + distance + " m off by " + error + ", stated " + stated);
            assertTrue(error < 2e-3, "at " + distance + " m off by " + error);
            assertTrue(stated < 2e-2, "at " + distance + " m stated " + stated);
        }
    }

    private static Aquifer aquifer(RectilinearGrid grid) {
        int cells = grid.cellCount();
        boolean[] active = new boolean[cells];
        Arrays.fill(active, true);
        return new Aquifer(
                grid,
                filled(cells, T),
                filled(cells, T),
                filled(cells, S),
                filled(cells, 0),
                filled(cells, -50),
                active);
    }

    private static double[] filled(int cells, double value) {
        double[] values = new double[cells];
        Arrays.fill(values, value);
        return values;
    }

    /**
     * By hand: a response of 0.015 d/m² in a bore and of 0.005 d/m² at any distance, 2 % larger on wider cells. Two bores of 1,500 m³/d are lowered by 30
     * m, which may be 30.6 m; the 30 m from a depth of 30 m to the lift of 60 m give 3,000 m³/d, or 3,000 / 1.02.
     */
    @Test
    void errorsOfLiftAndYieldFollowThatOfTheResponse() {
        DoubleUnaryOperator fine = distance -> distance < 1 ? 0.015 : 0.005;
        DoubleUnaryOperator coarse = distance -> 1.02 * fine.applyAsDouble(distance);
        SpacingSpecification spacing = spacing(List.of(Layout.LINE), List.of(2), new Position(0, 0));
        SpacingResult result =
                new SpacingComparison(spacing, new GriddedResponse(fine, Optional.of(coarse)), 500, 30, 0).compare();
        SpacingResult.Line line = result.lines().get(0);
        assertEquals(60, line.lift(), 1e-9);
        assertEquals(0.02, line.gridError().response(), 1e-9);
        assertEquals(0.6, line.gridError().lift(), 1e-9);
        assertEquals(3000 - 3000 / 1.02, line.gridError().yield(), 1e-3);
        String words = result.wordsOnGrid();
        assertTrue(words.contains("cells of 500 m") && words.contains("2.00 %"), words);
        assertEquals(0, new GriddedResponse(distance -> 0, Optional.of(distance -> 0)).relativeError(1e6));
        SpacingResult unknown =
                new SpacingComparison(spacing, new GriddedResponse(fine, Optional.empty()), 500, 30, 0).compare();
        assertTrue(unknown.wordsOnGrid().contains("not known"), unknown.wordsOnGrid());
        assertTrue(Double.isNaN(unknown.lines().get(0).gridError().lift()));
    }

    /** By hand: any two bores are a line, three of the hexagon and of the ring a triangle, four of the grid and of the ring a square. */
    @Test
    void layoutsThatAreTheSameAreComparedOnce() {
        SpacingResult result = new SpacingComparison(
                        spacing(List.of(Layout.values()), List.of(2, 3, 4, 5), new Position(0, 0)),
                        GridErrorTest::theis,
                        30,
                        0)
                .compare();
        assertEquals(16 - 5, result.economic().size());
        assertEquals(6 * 11, result.lines().size());
        assertEquals(
                "Left out as the same thing repeated: grid of 2 bores is the line, hexagon of 2 bores is the line, ring of 2 bores"
                        + " is the line, ring of 3 bores is the hexagon, ring of 4 bores is the grid.",
                result.repeats());
        assertEquals(
                "",
                new SpacingComparison(
                                spacing(List.of(Layout.RING), List.of(2, 3), new Position(0, 0)),
                                GridErrorTest::theis,
                                30,
                                0)
                        .compare()
                        .repeats());
    }
}
