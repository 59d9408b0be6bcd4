package org.headfall.scenarios.comparison;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.reference.CoordinateReference;
import org.headfall.scenarios.results.CsvFile;
import org.headfall.scenarios.results.CsvLineCells;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.results.MapRasters;
import org.headfall.scenarios.results.ResultsException;
import org.headfall.scenarios.results.ResultsFolder;
import org.headfall.scenarios.results.WrittenFiles;
import org.headfall.scenarios.vector.Feature;
import org.headfall.scenarios.vector.GeoJsonWriter;
import org.headfall.scenarios.vector.PropertyValue;
import org.locationtech.jts.geom.Geometry;

/** Writes the folder of a comparison. */
public final class ComparisonOutputs {

    /** Names of the files. */
    public static final WrittenFiles FILES =
            WrittenFiles.named("(compared-runs|compared-stations|affected-places)\\.csv"
                    + "|affected-areas\\.geojson|lower-by-[0-9]{4}-[0-9]{2}-[0-9]{2}\\.tif");

    /** Name of the file with the areas. */
    private static final String AREAS = "affected-areas.geojson";

    private static final double SQUARE_METRES_PER_SQUARE_KILOMETRE = 1e6;

    private final RunComparison comparison;
    private final List<Double> thresholds;

    /**
     * Outputs of a comparison.
     *
     * @param comparison the comparison
     * @param thresholds how much lower head must be for a place to count as affected (m), positive
     */
    public ComparisonOutputs(RunComparison comparison, List<Double> thresholds) {
        this.comparison = comparison;
        this.thresholds = List.copyOf(thresholds);
    }

    /**
     * Writes {@code compared-runs.csv}, {@code compared-stations.csv}, {@code affected-places.csv}, a GeoTIFF {@code
     * lower-by-DATE.tif} for each common date, and {@code affected-areas.geojson}, for runs on a local grid in its metres.
     *
     * @param target the folder
     * @param overwrite whether an older comparison there may be replaced
     * @throws ResultsException if it may not, or a file cannot be written
     */
    public void into(Path target, boolean overwrite) throws ResultsException {
        try (ResultsFolder folder = ResultsFolder.open(target, overwrite, FILES)) {
            writeRuns(folder.file("compared-runs.csv"));
            writeStations(folder.file("compared-stations.csv"));
            writeAffected(folder.file("affected-places.csv"));
            for (MapDifference map : comparison.maps()) {
                MapRasters.write(folder.file("lower-by-" + map.date() + ".tif"), description(), map.lowerBy());
            }
            writeAreas(folder.file(AREAS));
            folder.complete();
        } catch (IOException e) {
            throw ResultsFolder.explained(e, target);
        }
    }

    private RunDescription description() {
        return comparison.first().description();
    }

    private void writeStations(Path target) throws IOException {
        CsvFile.write(
                target,
                List.of(
                        "station",
                        "kind",
                        "holder",
                        "date",
                        "head in the first run (m above datum)",
                        "head in the second run (m above datum)",
                        "lower in the second by (m)",
                        "numerical error of both runs (m)",
                        "discharge in the first run (m3/d)",
                        "discharge in the second run (m3/d)"),
                comparison.stations(),
                station -> new CsvLineCells()
                        .text(station.station())
                        .text(station.kind())
                        .text(station.holder())
                        .date(station.date().atStartOfDay())
                        .number(station.firstHead(), 3)
                        .number(station.secondHead(), 3)
                        .number(station.lowerBy(), 3)
                        .number(station.error(), 4)
                        .number(station.firstFlow(), 2)
                        .number(station.secondFlow(), 2));
    }

    private void writeAffected(Path target) throws IOException {
        CsvFile.write(
                target,
                List.of(
                        "lower by at least (m)",
                        "date",
                        "holder",
                        "station",
                        "kind",
                        "head at the start of the second run (m above datum)",
                        "lower in the second by (m)",
                        "numerical error of both runs (m)",
                        "what that means"),
                comparison.affected(thresholds),
                place -> new CsvLineCells()
                        .number(place.threshold(), 3)
                        .date(place.date().atStartOfDay())
                        .text(place.holder())
                        .text(place.station())
                        .text(place.kind())
                        .number(place.presentHead(), 3)
                        .number(place.lowerBy(), 3)
                        .number(place.error(), 4)
                        .text(place.meaning()));
    }

    private void writeAreas(Path target) throws IOException {
        List<Feature> features = new ArrayList<>();
        for (MapDifference map : comparison.maps()) {
            for (double threshold : thresholds) {
                Geometry area = AffectedArea.of(description().grid(), map.lowerBy(), threshold);
                if (!area.isEmpty()) {
                    features.add(Feature.of(area, properties(map.date(), threshold, area)));
                }
            }
        }
        writer().write(features, target);
    }

    private GeoJsonWriter writer() {
        return description()
                .mapReference()
                .map(reference -> GeoJsonWriter.inDegrees(CoordinateReference.parse(reference.code())))
                .orElseGet(GeoJsonWriter::inPlane);
    }

    private void writeRuns(Path target) throws IOException {
        FinishedRun first = comparison.first();
        FinishedRun second = comparison.second();
        List<List<String>> lines = new ArrayList<>();
        lines.add(line("title", first, second, run -> run.description().title()));
        lines.add(line("first day", first, second, run -> date(run, 0)));
        lines.add(line(
                "last day", first, second, run -> date(run, run.description().endDay())));
        lines.add(line(
                "made by", first, second, run -> run.description().provenance().toolVersion()));
        lines.add(line("SHA-256 of the document and its files", first, second, ComparisonOutputs::inputs));
        comparison
                .differentFields()
                .forEach(difference -> lines.add(List.of("differs besides bores", "", "", difference)));
        comparison.fieldsNotCompared().forEach(field -> lines.add(List.of("could not be compared", "", "", field)));
        CsvFile.write(target, List.of("what", "first run", "second run", "both runs"), lines, line -> {
            CsvLineCells cells = new CsvLineCells();
            line.forEach(cells::text);
            return cells;
        });
    }

    private static List<String> line(
            String what, FinishedRun first, FinishedRun second, Function<FinishedRun, String> words) {
        return List.of(what, words.apply(first), words.apply(second), "");
    }

    private static String date(FinishedRun run, double day) {
        return run.description().calendar().at(day).toLocalDate().toString();
    }

    private static String inputs(FinishedRun run) {
        return run.description().provenance().inputs().stream()
                .map(file -> file.path() + " " + file.sha256())
                .collect(Collectors.joining("; "));
    }

    private static Map<String, PropertyValue> properties(LocalDate date, double threshold, Geometry area) {
        Map<String, PropertyValue> properties = new LinkedHashMap<>();
        properties.put("date", PropertyValue.of(date.toString()));
        properties.put("lower by at least (m)", PropertyValue.of(threshold));
        properties.put(
                "area (km2)",
                PropertyValue.of(Math.rint(area.getArea() / SQUARE_METRES_PER_SQUARE_KILOMETRE * 1000) / 1000));
        return properties;
    }
}
