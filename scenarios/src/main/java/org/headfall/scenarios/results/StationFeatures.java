package org.headfall.scenarios.results;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.headfall.scenarios.findings.ArtesianHead;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.reference.CoordinateReference;
import org.headfall.scenarios.vector.Feature;
import org.headfall.scenarios.vector.GeoJsonWriter;
import org.headfall.scenarios.vector.PropertyValue;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * Writes {@code bores.geojson} (RFC 7946): a point for each bore, spring and protected point, with levels and the
 * figures at the end of the run. Longitude and latitude are on the datum of the run's coordinate reference system, which
 * may differ from WGS 84 by a metre or two. A run on a local grid has no place on the Earth and gets no such file.
 */
public final class StationFeatures implements RunOutput {

    private static final GeometryFactory SHAPES = new GeometryFactory();

    @Override
    public void write(Path folder, FinishedRun run) throws IOException {
        if (run.description().mapReference().isEmpty()) {
            return;
        }
        CoordinateReference reference =
                CoordinateReference.parse(run.description().mapReference().get().code());
        GeoJsonWriter.inDegrees(reference).write(features(run), folder.resolve("bores.geojson"));
    }

    private static List<Feature> features(FinishedRun run) {
        List<Station> stations = run.description().stations();
        return IntStream.range(0, stations.size())
                .mapToObj(i -> Feature.of(
                        SHAPES.createPoint(new Coordinate(
                                stations.get(i).x(), stations.get(i).y())),
                        properties(run, i)))
                .toList();
    }

    private static Map<String, PropertyValue> properties(FinishedRun run, int index) {
        Station station = run.description().stations().get(index);
        StationSeries series = run.recording().series().get(index);
        ArtesianHead loss = run.findings().artesianHead().get(index);
        int last = series.days().length - 1;
        Map<String, PropertyValue> properties = new LinkedHashMap<>();
        properties.put("name", PropertyValue.of(station.name()));
        properties.put("kind", PropertyValue.of(station.kind()));
        if (station instanceof Station.BoreSite bore) {
            properties.put("holder", PropertyValue.of(bore.holder()));
            properties.put("operation", PropertyValue.of(bore.operation()));
        }
        put(properties, "ground level (m above datum)", station.groundLevel());
        put(properties, "outlet level (m above datum)", station.outletLevel().orElse(Double.NaN));
        put(properties, "head at start (m above datum)", series.head()[0]);
        put(properties, "head at end (m above datum)", series.head()[last]);
        put(properties, "drawdown at end (m)", series.head()[0] - series.head()[last]);
        put(properties, "water level in bore at end (m above datum)", series.levelInBore()[last]);
        put(properties, "discharge at end (m3/d)", series.discharge()[last]);
        properties.put(
                "flows by itself",
                PropertyValue.of(
                        FlowWords.of(loss.flowByItself(), run.description().calendar())));
        return properties;
    }

    /** JSON has no word for a value that does not exist but to leave it out. */
    private static void put(Map<String, PropertyValue> properties, String name, double value) {
        if (Double.isFinite(value)) {
            properties.put(name, PropertyValue.of(Math.rint(value * 1000) / 1000));
        }
    }
}
