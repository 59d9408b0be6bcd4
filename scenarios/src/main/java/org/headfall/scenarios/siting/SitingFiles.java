package org.headfall.scenarios.siting;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.headfall.scenarios.planning.PlanningPageWriter;
import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.reference.CoordinateReference;
import org.headfall.scenarios.results.CellFieldsFile;
import org.headfall.scenarios.results.CsvFile;
import org.headfall.scenarios.results.CsvLineCells;
import org.headfall.scenarios.results.MapRasters;
import org.headfall.scenarios.results.UncountedCsv;
import org.headfall.scenarios.results.WrittenFiles;
import org.headfall.scenarios.vector.Feature;
import org.headfall.scenarios.vector.GeoJsonWriter;
import org.headfall.scenarios.vector.PropertyValue;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * Writes what a search for sites has found: {@code siting.nc}, {@code largest-rate.tif}, {@code lift.tif}, {@code
 * energy.tif}, {@code sites.csv}, {@code site-effects.csv}, {@code site-check.csv} and, with a map reference, {@code
 * sites.geojson}.
 */
public final class SitingFiles {

    private static final GeometryFactory SHAPES = new GeometryFactory();

    private static final List<String> SITES = List.of(
            "site",
            "easting (m)",
            "northing (m)",
            "rate (L/s)",
            "rate (ML/yr)",
            "largest rate here (L/s)",
            "decided by",
            "lowest level in the bore (m above datum)",
            "lift (m)",
            "energy (kWh/ML)",
            "lowest level by the simulator (m above datum)");

    private static final List<String> EFFECTS =
            List.of("site", "limit", "on", "effect of the site", "left with all sites", "unit");

    private static final List<String> CHECK =
            List.of("limit", "on", "effect of all sites as predicted", "by the simulator", "difference", "unit");

    /** What a folder of sites may hold. */
    public static final WrittenFiles NAMES = WrittenFiles.named(
            "siting\\.nc|sites\\.(csv|geojson|html)|(site-(effects|check)|limits-not-counted)\\.csv|(largest-rate|lift|energy)\\.tif");

    private SitingFiles() {}

    /**
     * Writes the files.
     *
     * @param folder folder that receives them
     * @param result what was found
     * @param check what the simulator says of the sites, if it was asked
     * @throws IOException if a file cannot be written
     */
    public static void write(Path folder, SitingResult result, Optional<SiteCheck> check) throws IOException {
        RunDescription run = result.run();
        double[] litres = scaled(result.largestRate(), DischargeUnit.LITRES_PER_SECOND.of(1));
        double[] ruling = ruling(result);
        CellFieldsFile.write(
                folder.resolve("siting.nc"),
                run,
                "Largest rate that a new bore in each cell could take with all limits kept, and what decides it.",
                List.of(
                        field("largest_rate", "largest rate of a new bore", "L s-1", litres, List.of()),
                        field("ruling", "what decides the largest rate", "1", ruling, result.reasons()),
                        field("lift", "lift at the wanted or largest rate", "m", result.lift(), List.of()),
                        field("energy", "energy of that lift (kWh/ML)", "3600 J m-3", result.energy(), List.of())));
        MapRasters.writeLeast(folder.resolve("largest-rate.tif"), run, litres);
        MapRasters.write(folder.resolve("lift.tif"), run, result.lift());
        MapRasters.write(folder.resolve("energy.tif"), run, result.energy());
        sites(folder.resolve("sites.csv"), result, check);
        effects(folder.resolve("site-effects.csv"), result);
        if (check.isPresent()) {
            check(folder.resolve("site-check.csv"), run, check.get());
        }
        if (!result.uncounted().isEmpty()) {
            UncountedCsv.write(folder.resolve(UncountedCsv.NAME), result.uncounted());
        }
        features(folder, result);
        PlanningPageWriter.write(SitingPage.of(result, check), folder.resolve("sites.html"));
    }

    private static CellFieldsFile.Field field(
            String name, String longName, String units, double[] values, List<String> meanings) {
        return new CellFieldsFile.Field(name, longName, units, values, meanings);
    }

    private static double[] scaled(double[] values, double factor) {
        return Arrays.stream(values).map(value -> value * factor).toArray();
    }

    private static double[] ruling(SitingResult result) {
        double[] numbers = new double[result.ruling().length];
        for (int cell = 0; cell < numbers.length; cell++) {
            numbers[cell] = Double.isNaN(result.largestRate()[cell]) ? Double.NaN : result.ruling()[cell];
        }
        return numbers;
    }

    private static void sites(Path target, SitingResult result, Optional<SiteCheck> check) throws IOException {
        CsvFile.write(target, SITES, result.sites(), site -> {
            CsvLineCells cells = new CsvLineCells()
                    .number(site.number(), 0)
                    .number(site.x(), 1)
                    .number(site.y(), 1)
                    .number(DischargeUnit.LITRES_PER_SECOND.of(site.rate()), 2)
                    .number(DischargeUnit.MEGALITRES_PER_YEAR.of(site.rate()), 1)
                    .number(DischargeUnit.LITRES_PER_SECOND.of(site.largestRate()), 2)
                    .text(site.ruling())
                    .number(site.level(), 2)
                    .number(site.lift(), 2)
                    .number(site.energy(), 1);
            double simulated =
                    check.map(found -> found.levels().get(site.number() - 1)).orElse(Double.NaN);
            return cells.number(simulated, 2);
        });
    }

    private static void effects(Path target, SitingResult result) throws IOException {
        try (CsvFile file = new CsvFile(target, EFFECTS)) {
            for (Site site : result.sites()) {
                for (Site.Effect effect : site.effects()) {
                    file.line(new CsvLineCells()
                            .number(site.number(), 0)
                            .text(effect.limit())
                            .date(result.run().calendar().at(effect.day()))
                            .number(effect.effect(), 4)
                            .number(effect.left(), 4)
                            .text(effect.unit()));
                }
            }
            file.complete();
        }
    }

    private static void check(Path target, RunDescription run, SiteCheck check) throws IOException {
        CsvFile.write(
                target,
                CHECK,
                check.lines(),
                line -> new CsvLineCells()
                        .text(line.limit())
                        .date(run.calendar().at(line.day()))
                        .number(line.predicted(), 4)
                        .number(line.simulated(), 4)
                        .number(line.predicted() - line.simulated(), 4)
                        .text(line.unit()));
    }

    private static void features(Path folder, SitingResult result) throws IOException {
        if (result.run().mapReference().isEmpty()) {
            return;
        }
        CoordinateReference reference =
                CoordinateReference.parse(result.run().mapReference().get().code());
        List<Feature> features = result.sites().stream()
                .map(site -> Feature.of(SHAPES.createPoint(new Coordinate(site.x(), site.y())), properties(site)))
                .toList();
        GeoJsonWriter.inDegrees(reference).write(features, folder.resolve("sites.geojson"));
    }

    private static Map<String, PropertyValue> properties(Site site) {
        Map<String, PropertyValue> properties = new LinkedHashMap<>();
        properties.put("name", PropertyValue.of(site.name()));
        properties.put("rate (L/s)", PropertyValue.of(rounded(DischargeUnit.LITRES_PER_SECOND.of(site.rate()))));
        properties.put(
                "largest rate here (L/s)",
                PropertyValue.of(rounded(DischargeUnit.LITRES_PER_SECOND.of(site.largestRate()))));
        properties.put("decided by", PropertyValue.of(site.ruling()));
        properties.put("lowest level in the bore (m above datum)", PropertyValue.of(rounded(site.level())));
        properties.put("lift (m)", PropertyValue.of(rounded(site.lift())));
        properties.put("energy (kWh/ML)", PropertyValue.of(rounded(site.energy())));
        return properties;
    }

    private static double rounded(double value) {
        return Math.rint(value * 100) / 100;
    }
}
