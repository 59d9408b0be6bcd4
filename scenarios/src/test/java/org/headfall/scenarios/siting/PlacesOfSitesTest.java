package org.headfall.scenarios.siting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleBinaryOperator;
import org.headfall.scenarios.document.FileReach;
import org.headfall.scenarios.reading.ScenarioReader;
import org.headfall.scenarios.reading.ScenarioReading;
import org.headfall.scenarios.run.PlanningResponses;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.RunPlanner;
import org.headfall.scenarios.scenario.SitingSpecification;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Where new bores may stand at all. Distances between centres of cells and places are worked by hand. */
class PlacesOfSitesTest {

    /** 20 x 20 cells of 500 m. */
    private static final String DOCUMENT = """
            title: Places
            datum: metres above an invented datum
            crs: local
            period: {from: 2026-07-01, for: 1 yr}
            grid: {extent: {west: 0 km, east: 10 km, south: 0 km, north: 10 km}, cell: 500 m}
            aquifer: {transmissivity: 200 m2/d, storativity: 1e-3, top: -400 m, bottom: -500 m}
            ground: 110 m
            bores:
              - {name: stock bore, at: [9.25 km, 9.25 km], group: existing, holder: Downs, screen_radius: 100 mm, rate: 0 L/s}
              - {name: town bore, at: [8.25 km, 9.25 km], group: proposed, holder: Town, screen_radius: 100 mm, rate: 0 L/s}
            limits:
              - {name: any, quantity: pressure, at: stock bore, when: ever, at_least: -100 kPa}
            start: {heads: 100 m}
            output: {grids: yearly, bores: yearly, report_after: [1 yr], head_tolerance: 0.5 mm}
            siting:
              screen_radius: 100 mm
              largest_rate: 1 L/s
              efficiency: 60 %
              RULES
            """;

    /** Polygon from (2, 2) to (4, 8) km, as large as 4 x 12 cells. */
    private static final String STRIP = """
            {"type": "FeatureCollection", "features": [{"type": "Feature", "properties": {"name": "creek"},
             "geometry": {"type": "Polygon",
              "coordinates": [[[2000, 2000], [4000, 2000], [4000, 8000], [2000, 8000], [2000, 2000]]]}}]}
            """;

    @TempDir
    private Path folder;

    private SitingBase base(String text) throws Exception {
        Path document = folder.resolve("scenario.yaml");
        Files.writeString(folder.resolve("strip.geojson"), STRIP);
        Files.writeString(document, text);
        ScenarioReading reading = ScenarioReader.read(document, FileReach.FOLDER_OF_DOCUMENT);
        siting = reading.orThrow().planning().siting().orElseThrow();
        RunPlan plan = RunPlanner.plan(reading, "test", 1);
        return SitingBase.of(
                plan,
                PlanningResponses.of(plan, folder).orComputed(plan, (stage, fraction) -> {}),
                siting,
                (stage, fraction) -> {});
    }

    private SitingSpecification siting;

    private SitingResult search(String rules, String limits) throws Exception {
        return search(DOCUMENT, rules, limits);
    }

    private SitingResult search(String text, String rules, String limits) throws Exception {
        SitingBase base = base(text.replace("RULES", rules).replace("limits:\n", "limits:\n" + limits));
        return SiteSearch.in(base, siting, (stage, fraction) -> {});
    }

    private static String limit(String at, String cause) {
        return "  - {name: far enough, quantity: distance, at: " + at + ", cause: " + cause + ", at_least: 3.2 km}\n";
    }

    /** Nothing may be taken nearer than a distance, what decides is named, and every other cell may give something. */
    private static void expectKeptOff(
            SitingResult result, double atLeast, DoubleBinaryOperator distance, String reason) {
        int near = 0;
        int far = 0;
        for (int cell = 0; cell < result.largestRate().length; cell++) {
            double x = result.run().grid().centreX(cell);
            double y = result.run().grid().centreY(cell);
            if (Double.isNaN(result.largestRate()[cell]) || (y == 9250 && x > 8000)) {
                continue; // no aquifer, or a bore stands there
            }
            if (distance.applyAsDouble(x, y) < atLeast) {
                near++;
                assertEquals(0, result.largestRate()[cell], "at " + x + ", " + y);
                assertEquals(reason, result.reasons().get(result.ruling()[cell]), "at " + x + ", " + y);
            } else {
                far++;
                assertTrue(result.largestRate()[cell] > 0, "at " + x + ", " + y);
            }
        }
        assertTrue(near > 0 && far > 0, near + " near, " + far + " far");
    }

    private static double toStockBore(double x, double y) {
        return Math.hypot(x - 9250, y - 9250);
    }

    /** Distance to the rectangle of the strip. */
    private static double toStrip(double x, double y) {
        double dx = Math.max(0, Math.max(2000 - x, x - 4000));
        double dy = Math.max(0, Math.max(2000 - y, y - 8000));
        return Math.hypot(dx, dy);
    }

    @Test
    void limitsOnTheDistanceOfNewBoresFromABoreAreKept() throws Exception {
        for (String cause : List.of("proposed bores", "everyone", "Town")) {
            SitingResult result = search("holder: Town", limit("stock bore", cause));
            expectKeptOff(result, 3200, PlacesOfSitesTest::toStockBore, "far enough (stock bore)");
            assertEquals(List.of(), result.uncounted());
        }
    }

    @Test
    void limitsOnTheDistanceFromShapesAreKept() throws Exception {
        SitingResult result = search("holder: Town", limit("{polygons: strip.geojson}", "proposed bores"));
        expectKeptOff(result, 3200, PlacesOfSitesTest::toStrip, "far enough (strip.geojson)");
    }

    @Test
    void limitsOnTheDistanceOfOthersAreListed() throws Exception {
        SitingResult result = search("holder: Town", limit("town bore", "Downs"));
        assertEquals(1, result.uncounted().size());
        assertEquals("far enough (town bore)", result.uncounted().get(0).limit());
        assertEquals(
                "is about the distance of bores of Downs only",
                result.uncounted().get(0).reason());
        for (int cell = 0; cell < result.largestRate().length; cell++) {
            double x = result.run().grid().centreX(cell);
            double y = result.run().grid().centreY(cell);
            assertTrue(result.largestRate()[cell] > 0 || (y == 9250 && x > 8000), "at " + x + ", " + y);
        }
    }

    /** The rim is the sides of the grid and the strip, cut out of the aquifer by a polygon with a hole. */
    @Test
    void theRimOfTheActiveCellsCounts() throws Exception {
        Files.writeString(folder.resolve("aquifer.geojson"), """
                {"type": "FeatureCollection", "features": [{"type": "Feature", "properties": {}, "geometry": {"type": "Polygon",
                 "coordinates": [[[0, 0], [10000, 0], [10000, 10000], [0, 10000], [0, 0]],
                  [[2000, 2000], [2000, 8000], [4000, 8000], [4000, 2000], [2000, 2000]]]}}]}
                """);
        String text = DOCUMENT.replace("bottom: -500 m}", "bottom: -500 m, within: aquifer.geojson}");
        DoubleBinaryOperator toRim =
                (x, y) -> Math.min(toStrip(x, y), Math.min(Math.min(x, 10_000 - x), Math.min(y, 10_000 - y)));
        SitingResult result = search(text, "distances: {sides: 1.3 km}", "");
        expectKeptOff(result, 1300, toRim, "distance to the rim of the aquifer");
        assertEquals(
                48, Arrays.stream(result.largestRate()).filter(Double::isNaN).count());
    }
}
