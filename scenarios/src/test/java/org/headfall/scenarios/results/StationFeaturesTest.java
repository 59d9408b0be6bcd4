package org.headfall.scenarios.results;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.SmallField;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Holds {@code bores.geojson} to RFC 7946 (2016), sections 3.1.1, 3.1.2, 3.2, 3.3 and 4. */
class StationFeaturesTest {

    @TempDir
    Path folder;

    @Test
    void aPointForEachStationInLongitudeAndLatitude() throws IOException {
        RunDescription description = SmallField.description();
        new StationFeatures().write(folder, FinishedField.run(description));

        JsonNode root = JsonMapper.shared().readTree(Files.readString(folder.resolve("bores.geojson")));
        assertEquals("FeatureCollection", root.get("type").asString());
        assertFalse(root.has("crs"));
        assertEquals(description.stations().size(), root.get("features").size());
        for (int i = 0; i < root.get("features").size(); i++) {
            JsonNode feature = root.get("features").get(i);
            assertEquals("Feature", feature.get("type").asString());
            assertEquals("Point", feature.get("geometry").get("type").asString());
            JsonNode place = feature.get("geometry").get("coordinates");
            assertEquals(2, place.size());
            assertTrue(Math.abs(place.get(0).asDouble()) <= 180, place.toString());
            assertTrue(Math.abs(place.get(1).asDouble()) <= 90, place.toString());
            assertEquals(
                    description.stations().get(i).name(),
                    feature.get("properties").get("name").asString());
        }
    }

    @Test
    void figuresThatDoNotExistAreLeftOut() throws IOException {
        RunDescription description = SmallField.description();
        new StationFeatures().write(folder, FinishedField.run(description));

        JsonNode features = JsonMapper.shared()
                .readTree(Files.readString(folder.resolve("bores.geojson")))
                .get("features");
        JsonNode bore = features.get(0).get("properties");
        JsonNode point = features.get(features.size() - 1).get("properties");
        assertEquals(3.0, bore.get("drawdown at end (m)").asDouble(), 1e-9);
        assertTrue(bore.has("discharge at end (m3/d)"));
        assertFalse(point.has("discharge at end (m3/d)"));
        assertFalse(Files.exists(folder.resolve("bores.geojson.part")));
    }
}
