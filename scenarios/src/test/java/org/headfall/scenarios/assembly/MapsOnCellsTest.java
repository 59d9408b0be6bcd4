package org.headfall.scenarios.assembly;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.interpolation.SpreadValues;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.scenario.Scenario;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.simulation.Simulation;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Polygons, points and areas of a document on a grid of 20 by 8 cells of 1 km. */
class MapsOnCellsTest {
    private static final String DOCUMENT = """
            title: strip
            datum: metres above an invented datum
            crs: local
            period: {from: 2027-01-01, until: 2030-01-01}
            grid:
              extent: {west: 0 km, east: 20 km, south: 0 km, north: 8 km}
              cell: 1 km
            aquifer:
              transmissivity: 300 m2/d
              storativity: 2e-4
              top: -100 m
              bottom: -200 m
            ground: 150 m
            boundaries:
              - {name: intake, side: west, fixed_head: 200 m}
              - {name: outfall, side: east, fixed_head: 100 m}
            start: {steady: with existing bores}
            """;

    @TempDir
    Path folder;

    private final Problems problems = new Problems();

    private Optional<Model> assemble(String document) throws IOException, InputException {
        Path file = Files.writeString(folder.resolve("strip.yaml"), document);
        Scenario scenario =
                ScenarioReader.read(file, FileReach.FOLDER_OF_DOCUMENT).orThrow();
        return ModelAssembly.assemble(scenario, problems, 1);
    }

    private Model model(String document) throws IOException, InputException {
        Optional<Model> model = assemble(document);
        assertTrue(model.isPresent(), problems::toText);
        return model.get();
    }

    private static String rectangle(double west, double south, double east, double north) {
        return String.format(
                Locale.ROOT,
                "[[[%1$f,%2$f],[%3$f,%2$f],[%3$f,%4$f],[%1$f,%4$f],[%1$f,%2$f]]]",
                west,
                south,
                east,
                north);
    }

    private static String feature(String properties, String coordinates) {
        return "{\"type\":\"Feature\",\"properties\":{" + properties
                + "},\"geometry\":{\"type\":\"Polygon\",\"coordinates\":" + coordinates + "}}";
    }

    private void write(String name, String... features) throws IOException {
        Files.writeString(
                folder.resolve(name),
                "{\"type\":\"FeatureCollection\",\"features\":[" + String.join(",", features) + "]}");
    }

    @BeforeEach
    void writeMaps() throws IOException {
        write(
                "zones.geojson",
                feature("\"T\": 10", rectangle(-1000, -1000, 21_000, 9000)),
                feature("\"T\": 20", rectangle(5000, 0, 9000, 8000)));
        write("basin.geojson", feature("", rectangle(-500, 1000, 20_500, 6200)));
    }

    @Test
    void polygonsGiveCellsTheirConvertedValues() throws Exception {
        Model model = model(
                DOCUMENT.replace("300 m2/d", "{polygons: zones.geojson, property: T, unit: m2/h, elsewhere: 1 m2/d}"));
        double[] row = Arrays.copyOf(model.problem().aquifer().transmissivityX(), 20);
        double[] expected = new double[20];
        Arrays.fill(expected, 240);
        Arrays.fill(expected, 5, 9, 480);
        assertArrayEquals(expected, row, 1e-9);
    }

    @Test
    void elsewhereFillsWhatPolygonsLeave() throws Exception {
        Model model = model(
                DOCUMENT.replace("300 m2/d", "{polygons: basin.geojson, property: T, unit: m2/d, elsewhere: 7 m2/d}")
                        .replace("basin", "zone"));
        assertEquals(7, model.problem().aquifer().transmissivityX()[0]);
        assertEquals(33, model.problem().aquifer().transmissivityX()[5]);
    }

    @BeforeEach
    void writeAZoneAlone() throws IOException {
        write("zone.geojson", feature("\"T\": 33", rectangle(5000, 0, 9000, 8000)));
    }

    @Test
    void cellsInNoPolygonAreReported() throws Exception {
        assertTrue(assemble(DOCUMENT.replace("300 m2/d", "{polygons: zone.geojson, property: T, unit: m2/d}"))
                .isEmpty());
        String text = problems.toText();
        assertTrue(
                text.startsWith("strip.yaml:9:30: zone.geojson does not cover the grid: found no value in 128"), text);
    }

    @Test
    void pointsAreKrigedAndTheModelSaysHow() throws Exception {
        Files.writeString(
                folder.resolve("tests.csv"),
                "x (m),y (m),T (m2/d)\n500,500,100\n10500,4500,400\n19500,7500,50\n3500,6500,900\n");
        Model model = model(DOCUMENT.replace("300 m2/d", "{points: tests.csv, column: T, spread: log-kriging}"));
        double[] transmissivity = model.problem().aquifer().transmissivityX();
        assertEquals(100, transmissivity[0], 1e-9);
        assertEquals(400, transmissivity[4 * 20 + 10], 1e-9);
        SpreadField spread = model.spreads().get(0);
        assertEquals("aquifer.transmissivity.points", spread.key());
        assertEquals(4, spread.points());
        assertTrue(assertInstanceOf(SpreadValues.Kriging.class, spread.method()).rangeFitted());
    }

    @Test
    void aGivenVariogramIsUsed() throws Exception {
        Files.writeString(
                folder.resolve("tops.csv"), "x (m),y (m),top (m)\n500,500,-100\n10500,4500,-50\n19500,500,-90\n");
        Model model = model(DOCUMENT.replace(
                "top: -100 m",
                "top: {points: tops.csv, column: top, spread: kriging, variogram: {range: 8 km, nugget_share: 20 %}}"));
        SpreadValues.Kriging kriging = assertInstanceOf(
                SpreadValues.Kriging.class, model.spreads().get(0).method());
        assertFalse(kriging.rangeFitted());
        assertEquals(8000, kriging.variogram().range());
        assertEquals(0.2, kriging.variogram().nuggetShare());
        assertTrue(model.problem().aquifer().top()[0] > -99);
    }

    /** The field itself is tested where it is drawn; here that it reaches the cells, known values and ratio included. */
    @Test
    void aRandomFieldKeepsItsPointsAndFollowsItsNumber() throws Exception {
        Files.writeString(folder.resolve("tests.csv"), "x (m),y (m),T (m2/d)\n500,500,100\n10500,4500,400\n");
        String random = "{random: {median: 300 m2/d, deviation_of_log: 0.5, variogram: spherical, range: 6 km,"
                + " along_over_across: 3, direction: 90 deg, points: tests.csv, column: T, seed: 5, number: %d}}";
        double[] first = transmissivity(String.format(Locale.ROOT, random, 1));
        double[] second = transmissivity(String.format(Locale.ROOT, random, 2));
        assertEquals(100, first[0], 1e-9);
        assertEquals(400, second[4 * 20 + 10], 1e-9);
        assertArrayEquals(first, transmissivity(String.format(Locale.ROOT, random, 1)));
        assertEquals(160, Arrays.stream(first).distinct().count());
        assertFalse(Arrays.equals(first, second));
    }

    private double[] transmissivity(String field) throws Exception {
        return model(DOCUMENT.replace("300 m2/d", field)).problem().aquifer().transmissivityX();
    }

    @Test
    void aRandomFieldThatCannotBeDrawnIsReported() throws Exception {
        String random = "{random: {median: 300 m2/d, deviation_of_log: 0.5, variogram: exponential, range: 9999 km}}";
        assertTrue(assemble(DOCUMENT.replace("300 m2/d", random)).isEmpty());
        String text = problems.toText();
        assertTrue(
                text.startsWith("strip.yaml:9:28: aquifer.transmissivity.random is out of range: found a range of"),
                text);
    }

    @Test
    void theAquiferIsWhereItsPolygonsAre() throws Exception {
        Model model = model(DOCUMENT.replace("bottom: -200 m", "bottom: -200 m\n  within: basin.geojson"));
        boolean[] active = model.problem().aquifer().active();
        for (int cell = 0; cell < active.length; cell++) {
            int row = cell / 20;
            assertEquals(row >= 1 && row <= 5, active[cell], "cell " + cell);
        }
        double[] head = new Simulation(((Model.SteadyHeads) model.start()).problem(), model.settings()).steadyHead(0);
        RectilinearGrid grid = model.problem().aquifer().grid();
        for (int cell = 0; cell < head.length; cell++) {
            if (active[cell]) {
                assertEquals(200 - grid.centreX(cell) / 200, head[cell], 1e-6, "cell " + cell);
            }
        }
    }

    @Test
    void aRasterNeedsToCoverTheAquiferOnly() throws Exception {
        StringBuilder top = new StringBuilder("ncols 20\nnrows 6\nxllcorner 0\nyllcorner 1000\ncellsize 1000\n");
        for (int row = 0; row < 6; row++) {
            top.append("-80 ".repeat(19)).append("-80\n");
        }
        Files.writeString(folder.resolve("top.asc"), top);
        String within = DOCUMENT.replace("bottom: -200 m", "bottom: -200 m\n  within: basin.geojson");
        Model model = model(within.replace("top: -100 m", "top: {raster: top.asc}"));
        assertEquals(-80, model.problem().aquifer().top()[30]);
    }

    @Test
    void aBoreBesideTheAquiferIsReported() throws Exception {
        String within = DOCUMENT.replace("bottom: -200 m", "bottom: -200 m\n  within: basin.geojson");
        assertTrue(assemble(
                        within
                                + "bores: [{name: A, at: [5 km, 7.5 km], group: existing, screen_radius: 0.1 m, rate: 1 L/s}]\n")
                .isEmpty());
        assertEquals(ProblemKind.OUTSIDE_AQUIFER, problems.sorted().get(0).kind());
    }

    @Test
    void aBoundaryThatTheAquiferDoesNotReachIsReported() throws Exception {
        String within = DOCUMENT.replace("bottom: -200 m", "bottom: -200 m\n  within: basin.geojson");
        assertTrue(assemble(within.replace("side: east", "side: north")).isEmpty());
        assertEquals("strip.yaml:17:5", problems.sorted().get(0).place().toString());
    }

    @Test
    void aPartThatNothingHoldsIsReportedForASteadyStart() throws Exception {
        assertTrue(assemble(twoParts()).isEmpty());
        String text = problems.toText();
        assertTrue(text.contains("found 32 cells that no boundary"), text);
        assertTrue(text.contains("x 11500, y 500"), text);
        problems.sorted().forEach(problem -> assertEquals(ProblemKind.NOTHING_HOLDS_HEADS, problem.kind()));
    }

    /**
     * Water balance by hand: 32 cells of 1 km², with S 2e-4, that nothing feeds fall by 1 L/s over three years on average by
     * {@code Q t / (S A)}; the part beside the boundary stays at its head. Within
     * 2 mm only: the near field of the bore, eight cells wide, reaches across the gap and moves some water there and back.
     */
    @Test
    void aPartThatNothingHoldsRunsFromGivenHeads() throws Exception {
        Model model = ModelAssembly.assemble(given(twoParts() + BORE_IN_THE_SECOND), problems, 1)
                .orElseThrow();
        boolean[] active = model.problem().aquifer().active();
        double[] start = ((Model.GivenHeads) model.start()).heads();
        double end = model.days();
        try (Simulation simulation = new Simulation(model.problem(), model.settings())) {
            double[] head =
                    simulation.run(start, 0, end, new double[0], state -> {}).head();
            double fall = 0;
            for (int cell = 0; cell < head.length; cell++) {
                if (active[cell] && cell % 20 >= 11) {
                    fall += (120 - head[cell]) / 32;
                } else if (active[cell]) {
                    assertEquals(120, head[cell], 2e-3, "cell " + cell);
                }
            }
            assertEquals(86.4 * end / (2e-4 * 32e6), fall, 1e-3);
        }
    }

    @Test
    void aPartThatNothingHoldsHasNoHeadsBeforeAnyTaking() throws Exception {
        String limit = "limits: [{name: low, quantity: drawdown, at: A, cause: everyone,"
                + " compared_with: before any taking, when: ever, at_most: 5 m}]\n";
        assertTrue(ModelAssembly.assemble(given(twoParts() + BORE_IN_THE_SECOND + limit), problems, 1)
                .isEmpty());
        assertEquals(ProblemKind.NOTHING_HOLDS_HEADS, problems.sorted().get(0).kind());
        assertTrue(problems.toText().contains("no limit that is compared with heads before any taking"));
    }

    @Test
    void boresTooWideForTheirCellsAreAllReported() throws Exception {
        String bores = """
                bores:
                  - {name: A, at: [5 km, 4 km], group: existing, screen_radius: 0.3 m, rate: 1 L/s}
                  - {name: B, at: [9 km, 4 km], group: existing, screen_radius: 0.05 m, rate: 1 L/s}
                  - {name: C, at: [13 km, 4 km], group: existing, screen_radius: 0.25 m, rate: 1 L/s}
                """;
        String fine = DOCUMENT.replace("cell: 1 km", "cell: 1 km\n  refine: {around: bores, down_to: 0.5 m}");
        assertTrue(assemble(fine + bores).isEmpty());
        assertEquals(2, problems.count(), problems::toText);
        String text = problems.sorted().get(0).toString();
        assertTrue(
                text.contains("bore A is out of range: found a screen_radius of 0.3 m in a cell of 0.5 m by 0.5 m"),
                text);
        assertTrue(text.contains("a radius below 0.1") && text.contains("cells here at least 0.9"), text);
        assertTrue(assemble(fine.replace("0.5 m}", "1 m}") + bores).isPresent(), "what the message advises helps");
    }

    @Test
    void neighboursAcrossAJumpOfTransmissivityAreRemarkedOn() throws Exception {
        write(
                "zones.geojson",
                feature("\"T\": 1", rectangle(-1000, -1000, 21_000, 9000)),
                feature("\"T\": 1000", rectangle(1000, 0, 20_000, 8000)));
        String jump = DOCUMENT.replace("300 m2/d", "{polygons: zones.geojson, property: T, unit: m2/d}")
                .replace("cell: 1 km", "cell: 20 m")
                .replace("east: 20 km", "east: 2 km")
                .replace("north: 8 km", "north: 0.8 km");
        String bores = """
                bores:
                  - {name: A, at: [999.9 m, 410 m], group: existing, screen_radius: 0.1 m, rate: 1 L/s}
                  - {name: B, at: [1000.1 m, 410 m], group: existing, screen_radius: 0.1 m, rate: 1 L/s}
                """;
        model(jump + bores);
        assertTrue(
                problems.notices().toString().contains("bores A and B lower head at each other by an approximate"),
                problems.notices()::toString);
    }

    private static final String BORE_IN_THE_SECOND =
            "bores: [{name: A, at: [12.3 km, 4.1 km], group: existing, screen_radius: 0.1 m, rate: 1 L/s}]\n";

    /** 72 cells beside the western side, and 32 that a gap of dead cells parts from them. */
    private String twoParts() throws IOException {
        write(
                "basin.geojson",
                feature("", rectangle(0, 0, 9000, 8000)),
                feature("", rectangle(11_000, 0, 15_000, 8000)));
        return DOCUMENT.replace("bottom: -200 m", "bottom: -200 m\n  within: basin.geojson")
                .replace("  - {name: outfall, side: east, fixed_head: 100 m}\n", "")
                .replace("fixed_head: 200 m", "fixed_head: 120 m");
    }

    private Scenario given(String document) throws IOException, InputException {
        Path file = Files.writeString(
                folder.resolve("given.yaml"), document.replace("{steady: with existing bores}", "{heads: 120 m}"));
        return ScenarioReader.read(file, FileReach.FOLDER_OF_DOCUMENT).orThrow();
    }

    @Test
    void rainFallsOnThePartOfACellThatIsOutcrop() throws Exception {
        write("outcrop.geojson", feature("", rectangle(250, 0, 2000, 1500)));
        Model model = model(DOCUMENT + "recharge:\n  - {name: rain, rate: 36.525 mm/yr, within: outcrop.geojson}\n");
        double[] rate = model.problem().recharges().get(0).rate();
        assertEquals(0.75e-4, rate[0], 1e-16);
        assertEquals(1e-4, rate[1], 1e-16);
        assertEquals(0.375e-4, rate[20], 1e-16);
        assertEquals(0, rate[2]);
        double volume = IntStream.range(0, rate.length)
                .mapToDouble(cell -> rate[cell] * 1e6)
                .sum();
        assertEquals(1e-4 * 1750 * 1500, volume, 1e-9);
    }

    @Test
    void rainThatChangesFallsOnTheOutcropOnly() throws Exception {
        write("outcrop.geojson", feature("", rectangle(250, 0, 2000, 1500)));
        Files.writeString(folder.resolve("rain.csv"), "date,rate (mm/yr)\n2026-01-01,365.25\n");
        Model model =
                model(DOCUMENT + "recharge:\n  - {name: rain, rate: {file: rain.csv}, within: outcrop.geojson}\n");
        assertEquals(0.75, model.problem().recharges().get(0).rate()[0], 1e-12);
        assertEquals(0, model.problem().recharges().get(0).rate()[2]);
        assertEquals(1e-3, model.problem().recharges().get(0).factor().at(0), 1e-15);
    }

    @Test
    void anOutcropBesideTheAquiferIsReported() throws Exception {
        write("outcrop.geojson", feature("", rectangle(0, 7000, 2000, 8000)));
        String within = DOCUMENT.replace("bottom: -200 m", "bottom: -200 m\n  within: basin.geojson");
        assertTrue(assemble(within + "recharge:\n  - {name: rain, rate: 5 mm/yr, within: outcrop.geojson}\n")
                .isEmpty());
        assertTrue(problems.toText().contains("outcrop.geojson is outside the grid"), problems::toText);
    }
}
