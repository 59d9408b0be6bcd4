package org.headfall.scenarios.reference;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.headfall.scenarios.reference.CoordinateReference.GeographicPosition;
import org.headfall.scenarios.spatial.Gdal;
import org.headfall.scenarios.spatial.Position;
import org.headfall.scenarios.spatial.SpatialFormatException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CoordinateReferenceTest {
    @TempDir
    Path folder;

    @ParameterizedTest
    @ValueSource(ints = {7854, 32755, 32632, 3577, 3112, 2154, 3035})
    void gdalFindsTheSameLongitudesAndLatitudes(int code) throws Exception {
        CoordinateReference reference = CoordinateReference.ofEpsg(code);
        Position centre = reference.toPlane(centralLongitude(reference) + 1.5, centralLatitude(reference));
        Random random = new Random(code);
        StringBuilder input = new StringBuilder();
        double[][] places = new double[20][];
        for (int i = 0; i < places.length; i++) {
            places[i] = new double[] {
                centre.x() + 200_000 * (random.nextDouble() - 0.5), centre.y() + 200_000 * (random.nextDouble() - 0.5)
            };
            input.append(places[i][0]).append(' ').append(places[i][1]).append('\n');
        }
        Path file = folder.resolve("places.txt");
        Files.writeString(file, input);
        Path wkt = folder.resolve("system.wkt");
        Files.writeString(wkt, reference.wellKnownText());
        String printed = Gdal.run(
                "sh",
                "-c",
                "gdaltransform -s_srs " + wkt + " -t_srs " + geographic(reference) + " -output_xy < " + file + " 2>&1");
        String[] lines = printed.strip().split("\n", -1);
        for (int i = 0; i < places.length; i++) {
            String[] numbers = lines[i].strip().split(" ", -1);
            GeographicPosition ours = reference.toGeographic(places[i][0], places[i][1]);
            assertEquals(Double.parseDouble(numbers[0]), ours.longitude(), 1e-8, lines[i]);
            assertEquals(Double.parseDouble(numbers[1]), ours.latitude(), 1e-8, lines[i]);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {7854, 32755, 32632, 3577, 3112, 2193, 27700, 2154, 3035, 31256, 24200})
    void wellKnownTextMeansTheSameToGdalAsTheCode(int code) throws Exception {
        Path file = folder.resolve("system.wkt");
        Files.writeString(file, CoordinateReference.ofEpsg(code).wellKnownText());
        Map<String, String> ours = words(Gdal.run("gdalsrsinfo", "-o", "proj4", file.toString()));
        Map<String, String> theirs = words(Gdal.run("gdalsrsinfo", "-o", "proj4", "EPSG:" + code));
        assertEquals(theirs, ours);
        String identified = Gdal.run("gdalsrsinfo", "-e", file.toString());
        assertTrue(identified.contains("EPSG:" + code), identified);
    }

    @ParameterizedTest
    @ValueSource(ints = {7854, 3577, 3112, 2154, 32632})
    void forthAndBackEndsWhereItBegan(int code) {
        CoordinateReference reference = CoordinateReference.ofEpsg(code);
        Position start = reference.toPlane(centralLongitude(reference) + 1, centralLatitude(reference));
        GeographicPosition place = reference.toGeographic(start.x(), start.y());
        Position end = reference.toPlane(place.longitude(), place.latitude());
        assertEquals(start.x(), end.x(), 1e-4);
        assertEquals(start.y(), end.y(), 1e-4);
    }

    @Test
    void gridMappingOfATransverseMercator() {
        Map<String, Object> attributes = CoordinateReference.parse("epsg:32755").gridMapping();
        assertEquals("transverse_mercator", attributes.get("grid_mapping_name"));
        assertEquals(147.0, attributes.get("longitude_of_central_meridian"));
        assertEquals(0.0, attributes.get("latitude_of_projection_origin"));
        assertEquals(0.9996, attributes.get("scale_factor_at_central_meridian"));
        assertEquals(500_000.0, attributes.get("false_easting"));
        assertEquals(10_000_000.0, attributes.get("false_northing"));
        assertEquals(6_378_137.0, attributes.get("semi_major_axis"));
        assertEquals(298.257223563, attributes.get("inverse_flattening"));
        assertEquals("WGS 84", attributes.get("geographic_crs_name"));
        assertEquals("World Geodetic System 1984", attributes.get("horizontal_datum_name"));
        assertEquals(attributes.get("crs_wkt"), attributes.get("spatial_ref"));
    }

    @Test
    void gridMappingOfAlbersHasTwoParallels() {
        Map<String, Object> attributes = CoordinateReference.ofEpsg(3577).gridMapping();
        assertEquals("albers_conical_equal_area", attributes.get("grid_mapping_name"));
        assertArrayEquals(new double[] {-18, -36}, (double[]) attributes.get("standard_parallel"));
        assertEquals(132.0, attributes.get("longitude_of_central_meridian"));
    }

    @ParameterizedTest
    @CsvSource({
        "EPSG:4326, degrees",
        "EPSG:3857, merc",
        "EPSG:2225, units",
        "EPSG:2046, axes",
        "EPSG:999999, not in the EPSG dataset",
        "utm 55, utm 55",
        "EPSG:, EPSG:",
        "EPSG:27572, Greenwich",
        "EPSG:3902, not in the EPSG dataset"
    })
    void otherSystemsAreRefusedWithTheReason(String text, String reason) {
        SpatialFormatException fault =
                assertThrows(SpatialFormatException.class, () -> CoordinateReference.parse(text));
        assertTrue(fault.getMessage().contains(reason), fault.getMessage());
    }

    /** The projection is made late, so what proj4j cannot compute must have been refused before. */
    @Test
    void everySystemThatIsAcceptedHasAProjection() {
        List<Integer> accepted = new ArrayList<>();
        for (int code : codesOfTheDataset()) {
            try {
                CoordinateReference reference = CoordinateReference.ofEpsg(code);
                accepted.add(code);
                reference.toPlane(0, 0);
            } catch (SpatialFormatException refused) {
                boolean late = !accepted.isEmpty() && accepted.get(accepted.size() - 1) == code;
                assertFalse(late && refused.getMessage().contains("not in the EPSG dataset"), refused.getMessage());
            }
        }
        assertTrue(accepted.size() > 1000, accepted.size() + " accepted");
    }

    private static List<Integer> codesOfTheDataset() {
        List<Integer> codes = new ArrayList<>();
        ReferenceDefinitions.bundled().first(entry -> !codes.add(Integer.parseInt(entry.code())));
        return codes;
    }

    @Test
    void placesBeyondTheEarthAreRefused() {
        CoordinateReference reference = CoordinateReference.ofEpsg(7854);
        assertThrows(SpatialFormatException.class, () -> reference.toPlane(141, 95));
        assertThrows(SpatialFormatException.class, () -> reference.toGeographic(Double.NaN, 0));
    }

    private static double centralLongitude(CoordinateReference reference) {
        Map<String, Object> attributes = reference.gridMapping();
        return (Double) attributes.getOrDefault(
                "longitude_of_central_meridian", attributes.get("longitude_of_projection_origin"));
    }

    private static double centralLatitude(CoordinateReference reference) {
        return reference.gridMapping().get("false_northing").equals(10_000_000.0)
                        || reference.wellKnownText().contains("parallel_1\",-")
                ? -27
                : 47;
    }

    private String geographic(CoordinateReference reference) throws Exception {
        Matcher matcher = Pattern.compile("(GEOGCS\\[.*\\]),PROJECTION").matcher(reference.wellKnownText());
        assertTrue(matcher.find());
        Path file = folder.resolve("geographic.wkt");
        Files.writeString(file, matcher.group(1).replaceAll(",AUTHORITY\\[\"EPSG\",\"[0-9]+\"\\]\\]$", "]"));
        return file.toString();
    }

    /** The words of a PROJ text without those that only concern the change of datum. */
    private static Map<String, String> words(String text) {
        Map<String, String> words = new TreeMap<>();
        for (String word : text.strip().split(" +", -1)) {
            String[] pair = word.split("=", 2);
            if (!pair[0].equals("+towgs84") && !pair[0].equals("+nadgrids")) {
                words.put(pair[0], pair.length == 2 ? pair[1] : "");
            }
        }
        return words;
    }
}
