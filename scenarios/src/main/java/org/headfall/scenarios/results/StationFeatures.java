package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.headfall.scenarios.findings.ArtesianHead;
import org.headfall.scenarios.recording.MapReference;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.reference.CoordinateReference;
import tools.jackson.databind.json.JsonMapper;

/**
 * Writes {@code bores.geojson} (RFC 7946): a point for each bore, spring and protected point, with levels and the
 * figures at the end of the run. Longitude and latitude are on the datum of the run's coordinate reference system, which
 * may differ from WGS 84 by a metre or two. A run on a local grid has no place on the Earth and gets no such file.
 */
public final class StationFeatures implements RunOutput {

    private static final double ABOUT_A_CENTIMETRE = 1e7;

    @Override
    public void write(Path folder, FinishedRun run) throws IOException {
        if (run.description().mapReference().isEmpty()) {
            return;
        }
        Map<String, Object> collection = new LinkedHashMap<>();
        collection.put("type", "FeatureCollection");
        collection.put(
                "features", features(run, run.description().mapReference().get()));
        Path part = folder.resolve("bores.geojson.part");
        Files.writeString(part, JsonMapper.shared().writeValueAsString(collection));
        Files.move(part, folder.resolve("bores.geojson"), StandardCopyOption.ATOMIC_MOVE);
    }

    private static List<Map<String, Object>> features(FinishedRun run, MapReference reference) {
        CoordinateReference coordinates = CoordinateReference.parse(reference.code());
        List<Map<String, Object>> features = new ArrayList<>();
        for (int i = 0; i < run.description().stations().size(); i++) {
            Station station = run.description().stations().get(i);
            CoordinateReference.GeographicPosition place = coordinates.toGeographic(station.x(), station.y());
            Map<String, Object> feature = new LinkedHashMap<>();
            feature.put("type", "Feature");
            feature.put(
                    "geometry",
                    Map.of(
                            "type",
                            "Point",
                            "coordinates",
                            List.of(rounded(place.longitude()), rounded(place.latitude()))));
            feature.put("properties", properties(run, i));
            features.add(feature);
        }
        return features;
    }

    private static Map<String, Object> properties(FinishedRun run, int index) {
        Station station = run.description().stations().get(index);
        StationSeries series = run.recording().series().get(index);
        ArtesianHead loss = run.findings().artesianHead().get(index);
        int last = series.days().length - 1;
        Map<String, Object> properties = new LinkedHashMap<>();
        properties.put("name", station.name());
        properties.put("kind", station.kind());
        if (station instanceof Station.BoreSite bore) {
            properties.put("holder", bore.holder());
            properties.put("operation", bore.operation());
        }
        properties.put("ground level (m above datum)", station.groundLevel());
        put(properties, "outlet level (m above datum)", station.outletLevel().orElse(Double.NaN));
        put(properties, "head at start (m above datum)", series.head()[0]);
        put(properties, "head at end (m above datum)", series.head()[last]);
        put(properties, "drawdown at end (m)", series.head()[0] - series.head()[last]);
        put(properties, "water level in bore at end (m above datum)", series.levelInBore()[last]);
        put(properties, "discharge at end (m3/d)", series.discharge()[last]);
        properties.put(
                "flows by itself",
                FlowWords.of(loss.flowByItself(), run.description().calendar()));
        return properties;
    }

    /** JSON has no word for a value that does not exist but to leave it out. */
    private static void put(Map<String, Object> properties, String name, double value) {
        if (Double.isFinite(value)) {
            properties.put(name, Math.rint(value * 1000) / 1000);
        }
    }

    private static double rounded(double degrees) {
        return Math.rint(degrees * ABOUT_A_CENTIMETRE) / ABOUT_A_CENTIMETRE;
    }
}
