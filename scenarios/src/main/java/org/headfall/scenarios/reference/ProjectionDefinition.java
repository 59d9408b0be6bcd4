package org.headfall.scenarios.reference;

import java.util.HashMap;
import java.util.Map;
import org.headfall.scenarios.spatial.SpatialFormatException;

/**
 * The numbers of a projection, in degrees and metres.
 *
 * @param kind the projection
 * @param latitudeOfOrigin latitude of origin (degrees)
 * @param centralLongitude central meridian (degrees)
 * @param firstParallel first standard parallel (degrees), 0 where the projection has none
 * @param secondParallel second standard parallel (degrees), 0 where the projection has none
 * @param scale scale factor at the origin
 * @param falseEasting x of the origin (m)
 * @param falseNorthing y of the origin (m)
 */
record ProjectionDefinition(
        ProjectionKind kind,
        double latitudeOfOrigin,
        double centralLongitude,
        double firstParallel,
        double secondParallel,
        double scale,
        double falseEasting,
        double falseNorthing) {
    private static final double DEGREES_PER_ZONE = 6;
    private static final double WEST_OF_FIRST_ZONE = -183;

    /**
     * Reads the parameters of PROJ.
     *
     * @param code the code, for messages
     * @param parameters words such as "+proj=utm", "+zone=54", "+south"
     * @throws SpatialFormatException if the system is not one that a scenario may use
     */
    static ProjectionDefinition of(String code, String[] parameters) {
        Map<String, String> words = new HashMap<>();
        for (String parameter : parameters) {
            String[] pair = parameter.replaceFirst("^\\+", "").split("=", 2);
            words.put(pair[0], pair.length == 2 ? pair[1] : "");
        }
        requireMetres(code, words);
        String projection = words.getOrDefault("proj", "none");
        return projection.equals("utm") ? universal(words) : general(kind(code, projection, words), words);
    }

    private static void requireMetres(String code, Map<String, String> words) {
        if (words.getOrDefault("proj", "").equals("longlat")) {
            throw refusal(code, "a system in degrees");
        }
        boolean metres = words.getOrDefault("units", "m").equals("m") && number(words, "to_meter", 1) == 1;
        if (!metres) {
            throw refusal(code, "a system in other units than metres");
        }
        if (!words.getOrDefault("axis", "enu").startsWith("en")) {
            throw refusal(code, "a system whose axes do not run east and north");
        }
        if (!words.getOrDefault("pm", "greenwich").equalsIgnoreCase("greenwich")) {
            throw refusal(code, "longitudes that do not start at Greenwich");
        }
    }

    private static ProjectionKind kind(String code, String projection, Map<String, String> words) {
        return switch (projection) {
            case "tmerc", "etmerc" -> ProjectionKind.TRANSVERSE_MERCATOR;
            case "aea" -> ProjectionKind.ALBERS_EQUAL_AREA;
            case "lcc" ->
                words.containsKey("lat_2")
                        ? ProjectionKind.LAMBERT_CONFORMAL_TWO_PARALLELS
                        : ProjectionKind.LAMBERT_CONFORMAL_ONE_PARALLEL;
            case "laea" -> ProjectionKind.LAMBERT_AZIMUTHAL_EQUAL_AREA;
            default -> throw refusal(code, "projection \"" + projection + "\"");
        };
    }

    private static ProjectionDefinition universal(Map<String, String> words) {
        double longitude = WEST_OF_FIRST_ZONE + DEGREES_PER_ZONE * number(words, "zone", 1);
        double falseNorthing = words.containsKey("south") ? 10_000_000 : 0;
        return new ProjectionDefinition(
                ProjectionKind.TRANSVERSE_MERCATOR, 0, longitude, 0, 0, 0.9996, 500_000, falseNorthing);
    }

    private static ProjectionDefinition general(ProjectionKind kind, Map<String, String> words) {
        return new ProjectionDefinition(
                kind,
                number(words, "lat_0", 0),
                number(words, "lon_0", 0),
                number(words, "lat_1", 0),
                number(words, "lat_2", 0),
                number(words, "k", number(words, "k_0", 1)),
                number(words, "x_0", 0),
                number(words, "y_0", 0));
    }

    private static double number(Map<String, String> words, String name, double absent) {
        String text = words.get(name);
        return text == null ? absent : Double.parseDouble(text);
    }

    private static SpatialFormatException refusal(String code, String found) {
        return SpatialFormatException.of(
                code,
                found,
                "a projected system in metres with x to the east and y to the north: transverse Mercator (UTM and "
                        + "national zones), Albers, Lambert conformal or Lambert azimuthal");
    }
}
