package org.headfall.scenarios.vector;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.headfall.scenarios.reference.CoordinateReference;
import org.headfall.scenarios.spatial.Gdal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.WKTReader;

class GeoJsonWriterTest {
    @TempDir
    Path folder;

    private static Feature feature(String wellKnownText, Map<String, PropertyValue> properties) throws Exception {
        return Feature.of(new WKTReader().read(wellKnownText), properties);
    }

    private static List<Feature> everyKind() throws Exception {
        Map<String, PropertyValue> properties = new LinkedHashMap<>();
        properties.put("name", PropertyValue.of("spring \"upper\" \u2014 vent"));
        properties.put("level (m)", PropertyValue.of(157.25));
        properties.put("year", PropertyValue.of(2026));
        properties.put("flows", PropertyValue.of(true));
        properties.put("nothing", new PropertyValue.NoValue(TextPosition.NONE));
        properties.put("list", new PropertyValue.NestedValue("[1,{\"a\":2}]", TextPosition.NONE));
        return List.of(
                feature("POINT (349500.125 6521000)", properties),
                feature("LINESTRING (349500 6521000, 350000 6522000.5)", Map.of()),
                feature("POLYGON ((0 0, 10 0, 10 10, 0 10, 0 0), (2 2, 2 4, 4 4, 4 2, 2 2))", Map.of()),
                feature("MULTIPOLYGON (((0 0, 10 0, 10 10, 0 0)), ((20 0, 22 0, 22 2, 20 0)))", Map.of()));
    }

    private Path write(GeoJsonWriter writer, List<Feature> features) throws Exception {
        Path file = folder.resolve("out.geojson");
        try (OutputStream stream = Files.newOutputStream(file)) {
            writer.write(features, stream);
        }
        return file;
    }

    @Test
    void whatIsWrittenIsReadAgain() throws Exception {
        List<Feature> features = everyKind();
        List<Feature> again = new GeoJsonReader(VectorLimits.DEFAULT)
                .read(write(GeoJsonWriter.inPlane(), features))
                .features();
        assertEquals(features.size(), again.size());
        for (int i = 0; i < features.size(); i++) {
            assertTrue(
                    features.get(i).geometry().equalsExact(again.get(i).geometry()),
                    again.get(i).geometry().toText());
            assertEquals(shown(features.get(i)), shown(again.get(i)));
        }
    }

    private static Map<String, String> shown(Feature feature) {
        Map<String, String> shown = new LinkedHashMap<>();
        feature.properties().forEach((name, value) -> shown.put(name, value.getClass() + value.shown()));
        return shown;
    }

    @Test
    void outlinesAreTurnedTheWayTheStandardAsksFor() throws Exception {
        String clockwise = "POLYGON ((0 0, 0 10, 10 10, 10 0, 0 0), (2 2, 4 2, 4 4, 2 4, 2 2))";
        ByteArrayOutputStream stream = new ByteArrayOutputStream();
        GeoJsonWriter.inPlane().write(List.of(feature(clockwise, Map.of())), stream);
        String text = stream.toString(StandardCharsets.UTF_8);
        assertTrue(text.contains("[[[0,0],[10,0],[10,10],[0,10],[0,0]],[[2,2],[2,4],[4,4],[4,2],[2,2]]]"), text);
    }

    /** The central meridian of EPSG:32755 is 147 degrees east; its easting is 500 km by definition. */
    @Test
    void longitudeAndLatitudeAreWrittenWhereTheReferenceIsKnown() throws Exception {
        Path file = write(
                GeoJsonWriter.inDegrees(CoordinateReference.ofEpsg(32755)),
                List.of(feature("POINT (500000 6000000)", Map.of())));
        Geometry point = new GeoJsonReader(VectorLimits.DEFAULT)
                .read(file)
                .features()
                .get(0)
                .geometry();
        assertEquals(147, point.getCoordinate().x, 1e-7);
        assertTrue(point.getCoordinate().y < -36 && point.getCoordinate().y > -37, point.toText());
    }

    @Test
    void gdalReadsEveryKindOfShape() throws Exception {
        Path file = write(
                GeoJsonWriter.inDegrees(CoordinateReference.ofEpsg(32755)),
                List.of(
                        feature("POINT (500000 6000000)", Map.of("name", PropertyValue.of("a"))),
                        feature("LINESTRING (500000 6000000, 510000 6000000)", Map.of()),
                        feature("POLYGON ((500000 6000000, 510000 6000000, 510000 6010000, 500000 6000000))", Map.of()),
                        feature(
                                "MULTIPOLYGON (((500000 6000000, 510000 6000000, 510000 6010000, 500000 6000000)))",
                                Map.of())));
        String printed = Gdal.run("ogrinfo", "-ro", "-al", file.toString());
        assertTrue(printed.contains("Feature Count: 4"), printed);
        for (String kind : List.of("POINT (147", "LINESTRING (147", "POLYGON ((147", "MULTIPOLYGON (((147")) {
            assertTrue(printed.contains(kind), printed);
        }
    }

    @Test
    void shapesThatCannotBeWrittenAreRefused() throws Exception {
        for (String shape : List.of("POLYGON EMPTY", "MULTIPOINT ((0 0), (1 1))")) {
            List<Feature> features = List.of(feature(shape, Map.of()));
            assertThrows(
                    IllegalArgumentException.class,
                    () -> GeoJsonWriter.inPlane().write(features, OutputStream.nullOutputStream()),
                    shape);
        }
        assertThrows(IllegalArgumentException.class, () -> PropertyValue.of(Double.NaN));
    }
}
