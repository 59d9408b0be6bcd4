package org.headfall.scenarios.spacing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.reading.ScenarioReading;
import org.headfall.scenarios.run.RunPlanner;
import org.headfall.scenarios.scenario.BoreSpecification.WellLossSpecification;
import org.headfall.scenarios.scenario.LayoutPlaces;
import org.headfall.scenarios.scenario.SpacingSpecification;
import org.headfall.scenarios.scenario.SpacingSpecification.Layout;
import org.headfall.scenarios.scenario.SpacingSpecification.Prices;
import org.headfall.scenarios.spatial.Position;
import org.headfall.solver.analytic.function.WellFunction;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.aquifer.Side;
import org.headfall.solver.aquifer.SideSegment;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.WellLoss;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.HeadDependence;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.nearfield.NearField;
import org.headfall.solver.nearfield.ObservedHead;
import org.headfall.solver.response.EffectFields;
import org.headfall.solver.response.UnitResponses;
import org.headfall.solver.schedule.Schedule;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class SpacingComparisonTest {

    private static final double TRANSMISSIVITY = 200;
    private static final double RATE = 3000;
    private static final double RADIUS = 0.1;
    private static final double DEPTH = 30;

    /** Thiem 1906: the drawdown of a bore falls with the logarithm of the distance. */
    private static double thiem(double distance) {
        return Math.log(50_000 / Math.max(RADIUS, distance)) / (2 * Math.PI * TRANSMISSIVITY);
    }

    private static SpacingSpecification spacing(Prices prices, WellLossSpecification loss) {
        return new SpacingSpecification(
                new Position(0, 0),
                List.of(Layout.LINE),
                List.of(2),
                50,
                20_000,
                12,
                RATE,
                60,
                3650,
                RADIUS,
                loss,
                0,
                0.6,
                prices);
    }

    /**
     * Theis 1957 (printed 1963 in USGS Water-Supply Paper 1545-C; from memory, derived again from equal marginal cost):
     * two bores stand best {@code N c Q² / (pi T k)} apart, with N the time pumped a year, c the cost of lifting a unit of
     * volume by a unit of length, Q the rate of each and k what a unit of distance costs a year.
     */
    @Test
    void spacesTwoBoresByEqualMarginalCost() {
        Prices prices = new Prices(0.3, 150, 250_000, 30, 0.05);
        SpacingSpecification spacing = spacing(prices, new WellLossSpecification(0, 0, 2));
        double cost = 0.3 / 0.6 * 998.2 * 9.80665 / 3.6e6;
        double annuity = 0.05 / (1 - Math.pow(1.05, -30));
        double each = RATE / 2;
        double best = 365.25 * cost * each * each / (Math.PI * TRANSMISSIVITY * 150 * annuity);
        assertTrue(best > 50 && best < 20_000, "the best spacing lies among those compared: " + best);
        SpacingResult result = new SpacingComparison(spacing, SpacingComparisonTest::thiem, DEPTH, 0).compare();
        assertEquals(best, result.economic().get(0).spacing(), 2e-3 * best);
    }

    /** One bore by the quadratic formula of {@code s = G Q + C Q²}. */
    @Test
    void yieldsWhatTheDrawdownAllows() {
        double c = 1e-6;
        FieldLayout one =
                new FieldLayout(List.of(new Position(0, 0)), SpacingComparisonTest::thiem, new WellLoss(0, c));
        double g = thiem(0);
        assertEquals((Math.sqrt(g * g + 4 * c * 25) - g) / (2 * c), one.totalRate(25), 1e-6);
        assertEquals(0, one.totalRate(-1));
        FieldLayout two = new FieldLayout(
                LayoutPlaces.of(Layout.LINE, 2, 1000), SpacingComparisonTest::thiem, new WellLoss(0, 0));
        assertEquals(2 * 25 / (g + thiem(1000)), two.totalRate(25), 1e-6);
    }

    /** A tree that joins n lattice points has n - 1 edges of the spacing; neighbours stand one spacing apart. */
    @ParameterizedTest
    @EnumSource(Layout.class)
    void joinsNeighbours(Layout layout) {
        for (int count : new int[] {1, 2, 4, 7, 9, 12}) {
            List<Position> places = LayoutPlaces.of(layout, count, 350);
            assertEquals(count, places.size());
            assertEquals((count - 1) * 350.0, LayoutDistances.pipe(places), 1e-6, layout + " of " + count);
            double nearest = Double.POSITIVE_INFINITY;
            for (int i = 0; i < count; i++) {
                for (int j = 0; j < i; j++) {
                    nearest = Math.min(nearest, LayoutDistances.distance(places.get(i), places.get(j)));
                }
            }
            assertTrue(count == 1 || Math.abs(nearest - 350) < 1e-6, layout + " of " + count);
        }
    }

    /** Four bores in the cells of a uniform aquifer, each solved for by itself: drawdown in each to 1 %. */
    @Test
    void agreesWithBoresInTheAquifer() {
        RectilinearGrid grid = new RectilinearGrid(Axis.uniform(0, 500, 41), Axis.uniform(0, 500, 41));
        int cells = grid.cellCount();
        double[] t = filled(cells, TRANSMISSIVITY);
        boolean[] active = new boolean[cells];
        Arrays.fill(active, true);
        Aquifer aquifer = new Aquifer(grid, t, t, filled(cells, 2e-4), filled(cells, 0), filled(cells, -50), active);
        List<OuterBoundary> sides = new ArrayList<>();
        for (Side side : Side.values()) {
            sides.add(new OuterBoundary.FixedHead(
                    side.toString(), SideSegment.whole(side, grid), Schedule.constant(100)));
        }
        FlowProblem problem = new FlowProblem(aquifer, Optional.empty(), sides, List.of(), List.of(), List.of());
        double x = 10_250;
        NearField field = problem.nearField(x, x, RADIUS);
        EffectFields fields = new EffectFields(
                problem,
                HeadDependence.none(),
                List.of(ObservedHead.atWall(field, List.of())),
                List.of(EffectFields.Receptor.at(0, field)),
                new EffectFields.NewBore(RADIUS, 100, 1000),
                1);
        RadialResponse radial = new RadialResponse(
                aquifer, fields.after(0, 1000), x, x, RADIUS, fields.own(0, 1000) + field.unresolvedAtWall());
        for (double distance : new double[] {300, 900, 2100}) {
            List<Position> places = LayoutPlaces.of(Layout.RING, 4, distance);
            List<Bore> bores = new ArrayList<>();
            for (Position place : places) {
                bores.add(new Bore("b" + bores.size(), x + place.x(), x + place.y(), RADIUS, WellLoss.NONE, List.of()));
            }
            UnitResponses solved = UnitResponses.of(problem.withBores(bores), List.of(), 1000, 1);
            double[] drawdown = new FieldLayout(places, radial, WellLoss.NONE).drawdown(RATE / 4);
            for (int i = 0; i < 4; i++) {
                double sum = 0;
                for (int j = 0; j < 4; j++) {
                    sum += RATE / 4 * solved.at(i, j, 1000);
                }
                assertEquals(sum, drawdown[i], 0.01 * sum, "bore " + i + " of spacing " + distance);
            }
        }
    }

    /**
     * The reference is the same document with its bores taken out: what the column says of them is the difference of the lifts,
     * and nothing where there are none. The field of an example with few cells and years.
     */
    @Test
    void saysHowMuchOfTheLiftBoresOfTheDocumentCause(@TempDir Path folder) throws Exception {
        String document = Files.readString(Path.of("examples", "corella", "scenario.yaml"))
                .replace("for: 20 yr", "for: 4 yr")
                .replace("  cell: 1 km", "  cell: 2 km")
                .replace("[1 yr, 10 yr, 20 yr]", "[1 yr, 4 yr]")
                .replaceAll("(?s)\nsiting:.*?\nspacing:", "\nspacing:")
                .replace("steps: 16", "steps: 3");
        Files.copy(Path.of("examples", "corella", "pumping-tests.csv"), folder.resolve("pumping-tests.csv"));
        SpacingResult with = compared(folder, document);
        SpacingResult without = compared(
                folder,
                document.replaceAll("(?s)\nbores:.*?\nstart:", "\nstart:")
                        .replace("with existing bores", "without bores"));
        assertTrue(with.lowered() > 0.5, "the bores lower heads: " + with.lowered());
        assertEquals(0, without.lowered());
        for (int i = 0; i < with.lines().size(); i++) {
            SpacingResult.Line line = with.lines().get(i);
            SpacingResult.Line alone = without.lines().get(i);
            assertEquals(alone.lift() + line.liftByDocument(), line.lift(), 2e-3, "line " + i);
            assertEquals(0, alone.liftByDocument(), "line " + i);
        }
    }

    /**
     * Theis (1935), Transactions of the American Geophysical Union 16, 519-524: two bores of the document lower head in the middle
     * by a sum of well functions, wherever in its cell the middle stands and however close to one of them.
     */
    @ParameterizedTest
    @CsvSource({"200.5, 200.5", "200.1, 200.9", "197, 203", "202, 200.3", "206.2, 200.5"})
    void bothHeadsAreThoseInTheMiddleAndNotOfItsCell(double x, double y, @TempDir Path folder) throws Exception {
        String document = """
                title: two bores in an even aquifer
                datum: metres above an invented datum
                crs: local
                period: {from: 2026-07-01, for: 2 yr}
                grid: {extent: {west: 0 km, east: 400 km, south: 0 km, north: 400 km}, cell: 4 km}
                aquifer: {transmissivity: 250 m2/d, storativity: 2.0e-4, top: -50 m, bottom: -150 m}
                ground: 100 m
                bores:
                  - {name: one, at: [200 km, 200 km], group: existing, screen_radius: 100 mm, outlet_level: 101 m, rate: 10 L/s}
                  - {name: two, at: [204 km, 200 km], group: existing, screen_radius: 100 mm, outlet_level: 101 m, rate: 6 L/s}
                start: {heads: 120 m}
                output: {report_after: [1 yr]}
                spacing:
                  at: [%s km, %s km]
                  layouts: [line]
                  bores: [2]
                  spacings: {from: 500 m, to: 5 km, steps: 3}
                  rate: 30 L/s
                  lift: 60 m
                  screen_radius: 100 mm
                  delivery_head: 40 m
                  efficiency: 60 %%
                  prices: {energy_per_kwh: 0.6, pipe_per_metre: 80, bore: 250000, paid_over: 30 yr, interest: 5 %%}
                """.formatted(x, y);
        double expected = 0;
        for (double[] bore : new double[][] {{200, 200, 864}, {204, 200, 518.4}}) {
            double distance = 1000 * Math.hypot(x - bore[0], y - bore[1]);
            double u = distance * distance * 2e-4 / (4 * 250 * 731);
            expected += bore[2] * WellFunction.of(u) / (4 * Math.PI * 250);
        }
        SpacingResult result = compared(folder, document);
        assertEquals(expected, result.lowered(), 0.005 * expected);
    }

    private static SpacingResult compared(Path folder, String document) throws Exception {
        Path file = Files.writeString(folder.resolve("scenario.yaml"), document);
        ScenarioReading reading = ScenarioReader.read(file, FileReach.FOLDER_OF_DOCUMENT);
        SpacingSpecification spacing = reading.orThrow().planning().spacing().orElseThrow();
        return SpacingComparison.in(RunPlanner.plan(reading, "test", 1), spacing, (stage, fraction) -> {});
    }

    /** By hand: of 3 m of drawdown by others 1 m lowers water that would have risen 1 m too high. */
    @Test
    void countsOnlyWhatHasToBeLifted() {
        SpacingSpecification spacing =
                spacing(new Prices(0.3, 150, 250_000, 30, 0.05), new WellLossSpecification(0, 0, 2));
        double own = 2 * RATE / 2 * thiem(1000);
        SpacingResult.Line line =
                new SpacingComparison(spacing, distance -> thiem(1000), 2 - own, 3).line(Layout.LINE, 2, 1000);
        assertEquals(2, line.lift(), 1e-9);
        SpacingResult result = new SpacingResult(List.of(line), List.of(line), spacing, 3, 0, "");
        assertTrue(result.wordsOnDocument().contains("by 3.00 m"), result.wordsOnDocument());
        assertTrue(result.wordsOnDocument().contains("water still rises by itself"), result.wordsOnDocument());
        assertEquals(2, line.liftByDocument(), 1e-9);
    }

    private static double[] filled(int cells, double value) {
        double[] values = new double[cells];
        Arrays.fill(values, value);
        return values;
    }

    /** Turning and moving keeps all distances; the mean of all places is the centre. */
    @ParameterizedTest
    @EnumSource(Layout.class)
    void turnsAndMovesALayoutAsAWhole(Layout layout) {
        Position centre = new Position(418_000, 6_320_000);
        List<Position> plain = LayoutPlaces.of(layout, 6, 800);
        List<Position> turned = LayoutPlaces.around(layout, 6, 800, 25, centre);
        for (int i = 0; i < 6; i++) {
            for (int j = 0; j < i; j++) {
                assertEquals(
                        LayoutDistances.distance(plain.get(i), plain.get(j)),
                        LayoutDistances.distance(turned.get(i), turned.get(j)),
                        1e-6);
            }
        }
        assertEquals(418_000, turned.stream().mapToDouble(Position::x).average().orElseThrow(), 1e-6);
        assertEquals(
                6_320_000, turned.stream().mapToDouble(Position::y).average().orElseThrow(), 1e-6);
    }

    /** A line towards the north goes north, as a compass has it. */
    @Test
    void countsDirectionsClockwiseFromNorth() {
        List<Position> north = LayoutPlaces.around(Layout.LINE, 2, 1000, 0, new Position(0, 0));
        assertEquals(0, north.get(1).x(), 1e-9);
        assertEquals(500, north.get(1).y(), 1e-9);
        List<Position> northEast = LayoutPlaces.around(Layout.LINE, 2, 1000, 45, new Position(0, 0));
        assertEquals(500 * Math.sqrt(0.5), northEast.get(1).x(), 1e-9);
        assertEquals(500 * Math.sqrt(0.5), northEast.get(1).y(), 1e-9);
    }
}
