package org.headfall.scenarios.vector;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import org.headfall.scenarios.spatial.SpatialFormatException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;

class GeoJsonReaderTest {
    private static final String SQUARE = "[[0,0],[10,0],[10,10],[0,10],[0,0]]";

    @TempDir
    Path folder;

    private final GeoJsonReader reader = new GeoJsonReader(VectorLimits.DEFAULT);

    private Path file(String text) throws IOException {
        return Files.writeString(folder.resolve("map.geojson"), text);
    }

    private static String collection(String... features) {
        return "{\"type\":\"FeatureCollection\",\"features\":[\n" + String.join(",\n", features) + "\n]}";
    }

    private static String feature(String kind, String coordinates) {
        return "{\"type\":\"Feature\",\"properties\":null,\"geometry\":{\"type\":\"" + kind + "\",\"coordinates\":"
                + coordinates + "}}";
    }

    private Geometry shape(String kind, String coordinates) throws IOException {
        return reader.read(file(collection(feature(kind, coordinates))))
                .features()
                .get(0)
                .geometry();
    }

    private SpatialFormatException fault(String text) throws IOException {
        Path file = file(text);
        return assertThrows(SpatialFormatException.class, () -> reader.read(file));
    }

    @Test
    void readsEveryKindOfShape() throws Exception {
        Point point = assertInstanceOf(Point.class, shape("Point", "[349500.25, 6521000, 12]"));
        assertEquals(349500.25, point.getX());
        assertEquals(6521000, point.getY());
        assertEquals(
                5,
                assertInstanceOf(LineString.class, shape("LineString", "[[0,0],[3,4]]"))
                        .getLength());
        Polygon polygon =
                assertInstanceOf(Polygon.class, shape("Polygon", "[" + SQUARE + ",[[2,2],[4,2],[4,4],[2,4],[2,2]]]"));
        assertEquals(100 - 4, polygon.getArea());
        MultiPolygon both = assertInstanceOf(
                MultiPolygon.class, shape("MultiPolygon", "[[" + SQUARE + "],[[[20,0],[22,0],[22,2],[20,2],[20,0]]]]"));
        assertEquals(104, both.getArea());
    }

    @Test
    void keepsPropertiesOfEveryKindWithTheirPlace() throws Exception {
        Path file = file("""
                {"type": "FeatureCollection", "features": [
                  {"geometry": {"coordinates": [1, 2], "type": "Point"}, "id": 7,
                   "properties": {"name": "Grünau", "T": 350.5, "deep": true, "note": null,
                                  "more": {"a": [1, 2]}},
                   "type": "Feature", "bbox": [1, 2, 1, 2]}
                ]}
                """);
        Feature feature = reader.read(file).features().get(0);
        assertEquals(
                List.of("name", "T", "deep", "note", "more"),
                List.copyOf(feature.properties().keySet()));
        assertEquals(
                new PropertyValue.TextValue("Grünau", new TextPosition(3, 27)),
                feature.properties().get("name"));
        assertEquals(
                new PropertyValue.NumberValue(350.5, new TextPosition(3, 42)),
                feature.properties().get("T"));
        assertEquals(
                new PropertyValue.TruthValue(true, new TextPosition(3, 57)),
                feature.properties().get("deep"));
        assertInstanceOf(PropertyValue.NoValue.class, feature.properties().get("note"));
        assertEquals(
                new PropertyValue.NestedValue("{\"a\":[1,2]}", new TextPosition(4, 27)),
                feature.properties().get("more"));
        assertEquals(new TextPosition(2, 3), feature.position());
        assertEquals(1, feature.number());
    }

    @Test
    void readsASingleFeatureAndAByteOrderMark() throws Exception {
        FeatureFile file = reader.read(file("\uFEFF" + feature("Point", "[1,2]")));
        assertEquals(1, file.features().size());
        assertEquals(Optional.empty(), file.reference());
    }

    @ParameterizedTest
    @CsvSource({
        "urn:ogc:def:crs:EPSG::7854, 7854",
        "urn:ogc:def:crs:EPSG:9.8:28354, 28354",
        "EPSG:32755, 32755",
        "urn:ogc:def:crs:OGC:1.3:CRS84, -1"
    })
    void readsTheReferenceSystemThatProgramsWriteForAPlane(String name, int code) throws Exception {
        String text = collection(feature("Point", "[1,2]"))
                .replace(
                        "{\"type\":\"FeatureCollection\"",
                        "{\"crs\":{\"type\":\"name\",\"properties\":{\"name\":\"" + name
                                + "\"}},\"type\":\"FeatureCollection\"");
        FeatureFile file = reader.read(file(text));
        assertEquals(Optional.of(name), file.reference());
        assertEquals(code < 0 ? OptionalInt.empty() : OptionalInt.of(code), file.epsgCode());
    }

    @Test
    void aPolygonThatCrossesItselfIsReportedWithFeatureAndPlace() throws Exception {
        SpatialFormatException fault = fault(collection(
                feature("Polygon", "[" + SQUARE + "]"), feature("Polygon", "[[[0,0],[10,10],[10,0],[0,10],[0,0]]]")));
        assertEquals("in feature 2 outlines that cross at x 5, y 5", fault.found());
        assertEquals(3, fault.line());
        assertEquals(1, fault.column());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "[[[0,0],[10,0],[10,10],[0,10],[0,0]],[[20,20],[22,20],[22,22],[20,20]]] | a hole outside its polygon",
                "[[[0,0],[10,0],[10,10],[0,10],[0,0]],[[1,1],[9,1],[9,9],[1,9],[1,1]],[[2,2],[3,2],[3,3],[2,2]]] | a hole within another",
                "[[[0,0],[10,0],[5,5],[10,10],[0,10],[5,5],[0,0]]] | an outline that touches itself",
                "[[[0,0],[5,5],[10,10],[0,0]]] | outlines that cross"
            })
    void otherImproperPolygonsAreReportedInWords(String coordinates, String words) throws Exception {
        String found = fault(collection(feature("Polygon", coordinates))).found();
        assertTrue(found.contains(words), found);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Polygon | [[[0,0],[10,0],[10,10],[0,10]]] | begins at x 0, y 0 and ends at x 0, y 10",
                "Polygon | [[[0,0],[10,0],[0,0]]] | an outline of 3 coordinates",
                "Polygon | [] | an empty list",
                "Polygon | [[]] | an empty list",
                "Polygon | [[0,0],[10,0],[0,0]] | the coordinates x 0, y 0",
                "LineString | [[0,0]] | a list of 1",
                "LineString | [1,2] | the coordinates x 1, y 2",
                "Point | [[1,2]] | a list of 1",
                "Point | [1] | the end of a list",
                "Point | [1,2,3,4] | 4",
                "Point | [1,\"2\"] | the text \"2\"",
                "Point | [1,null] | null",
                "Point | 7 | 7",
                "Point | [1e400, 2] | too large",
                "MultiPolygon | [[[[[1,2]]]]] | another list within lists",
                "MultiPoint | [[1,2]] | a shape of the kind \"MultiPoint\""
            })
    void coordinatesThatDoNotFitTheirShapeAreReported(String kind, String coordinates, String words) throws Exception {
        SpatialFormatException fault = fault(collection(feature(kind, coordinates)));
        assertTrue(fault.found().contains(words), fault::getMessage);
        assertEquals(2, fault.line(), fault::getMessage);
        assertTrue(fault.column() >= 44, fault::getMessage);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "`` | the end of the file",
                "[] | a list",
                "{} | no member \"type\"",
                "{\"type\":\"Topology\"} | the type \"Topology\"",
                "{\"type\":\"Polygon\",\"coordinates\":[]} | the type \"Polygon\"",
                "{\"type\":3} | 3",
                "{\"type\":\"FeatureCollection\"} | no member \"features\"",
                "{\"type\":\"FeatureCollection\",\"features\":[]} | no feature",
                "{\"type\":\"FeatureCollection\",\"features\":{}} | an object",
                "{\"type\":\"FeatureCollection\",\"features\":[7]} | 7",
                "{\"type\":\"FeatureCollection\",\"features\":[{\"type\":\"Point\"}]} | the type \"Point\"",
                "{\"type\":\"FeatureCollection\",\"features\":[{}]} | no member \"type\"",
                "{\"type\":\"Feature\",\"geometry\":null} | feature 1 without a geometry",
                "{\"type\":\"Feature\",\"geometry\":[]} | a list",
                "{\"type\":\"Feature\",\"geometry\":{}} | a geometry without a type",
                "{\"type\":\"Feature\",\"geometry\":{\"type\":\"Point\"}} | a Point without coordinates",
                "{\"type\":\"Feature\",\"properties\":[]} | a list",
                "{\"type\":\"Feature\",\"type\":\"Feature\"} | Duplicate",
                "{\"type\":\"Feature\",} | Unexpected character",
                "{\"type\":\"Feature\" | Unexpected end",
                "{\"type\":\"Feature\",\"geometry\":{\"type\":\"Point\",\"coordinates\":[NaN,1]}} | NaN",
                "{\"type\":\"Feature\",\"geometry\":{\"type\":\"Point\",\"coordinates\":[1,2]}}{} | more text"
            })
    void textsThatAreNoGeoJsonOfFeaturesAreReported(String text, String words) throws Exception {
        SpatialFormatException fault = fault(text);
        assertTrue(fault.found().contains(words), fault::getMessage);
        assertTrue(fault.line() >= 1, fault::getMessage);
    }

    /** The parser names places as programmers see them, with the name of one of its options. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "[{\"type\":\"Feature\" | Unexpected end-of-input: expected close marker for Object",
                "[{\"type\":\"Feature\"] | Unexpected close marker ']': expected '}'",
                "[tru | 'tru'"
            })
    void aFileCutShortIsToldByLineAndColumn(String text, String words) throws Exception {
        SpatialFormatException fault = fault("{\"type\":\"FeatureCollection\",\n\"features\":" + text);
        assertTrue(fault.found().contains(words), fault::getMessage);
        assertFalse(fault.found().contains("Source") || fault.found().contains("start"), fault::getMessage);
        assertEquals(2, fault.line(), fault::getMessage);
    }

    @Test
    void faultsOfSingleFeaturesLeaveTheOthers() throws Exception {
        Path file = file(collection(
                feature("Polygon", "[[[0,0],[10,10],[10,0],[0,10],[0,0]]]"),
                feature("Polygon", "[" + SQUARE + "]"),
                feature("MultiPoint", "[[1,2]]")));
        List<SpatialFormatException> faults = new ArrayList<>();
        FeatureFile read = reader.read(file, faults::add);
        assertEquals(
                List.of(2, 4), faults.stream().map(SpatialFormatException::line).toList());
        assertEquals(List.of(2), read.features().stream().map(Feature::number).toList());
    }

    @Test
    void bytesThatAreNotUtf8AreReported() throws Exception {
        Path file = Files.write(
                folder.resolve("latin.geojson"),
                feature("Point", "[1,2]")
                        .replace("null", "{\"a\":\"Gr\u00fcn\"}")
                        .getBytes(StandardCharsets.ISO_8859_1));
        SpatialFormatException fault = assertThrows(SpatialFormatException.class, () -> reader.read(file));
        assertTrue(fault.found().contains("UTF-8"), fault::getMessage);
    }

    @Test
    void aFileThatIsNotThereIsReported() {
        SpatialFormatException fault =
                assertThrows(SpatialFormatException.class, () -> reader.read(folder.resolve("none.geojson")));
        assertTrue(fault.found().contains("cannot be read"), fault::getMessage);
    }

    @ParameterizedTest
    @ValueSource(strings = {"[", "{\"a\":"})
    void deepNestingIsRefusedWhereverItStands(String open) throws Exception {
        String deep = open.repeat(100_000);
        assertTrue(fault(deep).line() == 1);
        SpatialFormatException fault = fault("{\"type\":\"Feature\",\"properties\":{\"a\":" + deep);
        assertTrue(fault.found().contains("depth"), fault::getMessage);
        assertTrue(fault("{\"type\":\"Feature\",\"other\":" + deep).found().contains("depth"));
    }

    @Test
    void largeFilesAreRefusedBeforeTheyAreRead() throws Exception {
        GeoJsonReader small = new GeoJsonReader(new VectorLimits(1000, 2, 6, 30));
        Path file = file(collection(feature("Point", "[1,2]"), feature("Point", "[1,2]"), feature("Point", "[1,2]")));
        assertTrue(message(small, file).contains("more features"), message(small, file));
        file(collection(feature("LineString", "[[1,2],[2,3],[3,4],[4,5],[5,6],[6,7],[7,8]]")));
        assertTrue(message(small, file).contains("more coordinates"), message(small, file));
        file(" ".repeat(1001));
        assertTrue(message(small, file).contains("a file of 0 MB"), message(small, file));
    }

    private static String message(GeoJsonReader reader, Path file) {
        return assertThrows(SpatialFormatException.class, () -> reader.read(file))
                .getMessage();
    }

    /** Whatever bytes are changed, removed or doubled, the reader gives features or says what is wrong. */
    @Test
    void spoiledFilesGiveFeaturesOrAFault() throws Exception {
        byte[] sound = collection(
                        feature("Polygon", "[" + SQUARE + ",[[2,2],[4,2],[4,4],[2,4],[2,2]]]"),
                        feature("Point", "[1.5e2, -2]").replace("null", "{\"T\":35,\"x\":[{\"y\":null}]}"))
                .getBytes(StandardCharsets.UTF_8);
        Path file = folder.resolve("spoiled.geojson");
        int faults = 0;
        for (long seed = 0; seed < 3000; seed++) {
            Files.write(file, spoiled(sound, new Random(seed)));
            try {
                assertTrue(!reader.read(file).features().isEmpty(), "seed " + seed);
            } catch (SpatialFormatException fault) {
                faults++;
            } catch (RuntimeException other) {
                throw new AssertionError("seed " + seed, other);
            }
        }
        assertTrue(faults > 1000, faults + " faults");
    }

    private static byte[] spoiled(byte[] sound, Random random) {
        byte[] bytes = sound.clone();
        int at = random.nextInt(bytes.length);
        switch (random.nextInt(3)) {
            case 0 -> bytes[at] = (byte) random.nextInt(256);
            case 1 -> bytes = java.util.Arrays.copyOf(bytes, at);
            default -> {
                int to = random.nextInt(bytes.length);
                bytes[to] = bytes[at];
            }
        }
        return bytes;
    }
}
