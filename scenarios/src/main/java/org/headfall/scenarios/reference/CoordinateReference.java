package org.headfall.scenarios.reference;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import org.headfall.scenarios.reference.ProjectionKind.Parameter;
import org.headfall.scenarios.spatial.Position;
import org.headfall.scenarios.spatial.SpatialFormatException;
import org.jspecify.annotations.Nullable;
import org.locationtech.proj4j.CRSFactory;
import org.locationtech.proj4j.CoordinateReferenceSystem;
import org.locationtech.proj4j.Proj4jException;
import org.locationtech.proj4j.ProjCoordinate;
import org.locationtech.proj4j.proj.Projection;

/**
 * A projected coordinate reference system in metres, x to the east and y to the north. Immutable, safe to share
 * between threads.
 */
public final class CoordinateReference {
    /** What proj4j takes of every system of the dataset; with other words it has to be asked. */
    private static final Set<String> PLAIN_WORDS = Set.of(
            "+proj",
            "+zone",
            "+south",
            "+lat_0",
            "+lon_0",
            "+lat_1",
            "+lat_2",
            "+k",
            "+k_0",
            "+x_0",
            "+y_0",
            "+datum",
            "+ellps",
            "+towgs84",
            "+units",
            "+no_defs");

    private final int code;
    private final ProjectionDefinition definition;
    private final String parameters;

    /** Null until it is first asked for: most runs never do, and proj4j reads a megabyte of datum shifts before. */
    private volatile @Nullable Projection projection;

    private CoordinateReference(int code, ProjectionDefinition definition, String parameters) {
        this.code = code;
        this.definition = definition;
        this.parameters = parameters;
    }

    /**
     * A place on the Earth, in degrees on the datum of the reference system.
     *
     * @param longitude degrees east of Greenwich
     * @param latitude degrees north of the equator
     */
    public record GeographicPosition(double longitude, double latitude) {}

    /**
     * The system with a code as typed.
     *
     * @param text authority and number, such as "EPSG:7854"; upper or lower case
     * @return the system
     * @throws SpatialFormatException if the text is no EPSG code, or the code is unknown or not of a projected system
     *     in metres with a projection that we can describe
     */
    public static CoordinateReference parse(String text) {
        if (!text.trim().matches("(?i)epsg:[0-9]{4,6}")) {
            throw SpatialFormatException.of(
                    "coordinate reference", "\"" + text + "\"", "an EPSG code, as in EPSG:32755");
        }
        return ofEpsg(Integer.parseInt(text.trim().substring("EPSG:".length())));
    }

    /**
     * The system with an EPSG code.
     *
     * @param code the number
     * @return the system
     * @throws SpatialFormatException if the code is unknown or not of a projected system in metres with a projection
     *     that we can describe
     */
    public static CoordinateReference ofEpsg(int code) {
        String parameters = ReferenceDefinitions.bundled()
                .ofCode(Integer.toString(code))
                .orElseThrow(() -> unknown(code))
                .parameters();
        String[] words = parameters.split("\\s+");
        if (!isPlain(words)) {
            // What proj4j does not know is unknown rather than unfit, so that comes first.
            projection(code, parameters);
        }
        return new CoordinateReference(code, ProjectionDefinition.of("EPSG:" + code, words), parameters);
    }

    private static boolean isPlain(String[] words) {
        for (String word : words) {
            if (!PLAIN_WORDS.contains(word.split("=", 2)[0])) {
                return false;
            }
        }
        return true;
    }

    /** Each thread that comes before the first has ended makes the same one. */
    private Projection projection() {
        Projection made = projection;
        if (made == null) {
            made = projection(code, parameters);
            projection = made;
        }
        return made;
    }

    private static Projection projection(int code, String parameters) {
        try {
            CoordinateReferenceSystem system = new CRSFactory().createFromParameters("EPSG:" + code, parameters);
            if (system == null) {
                throw unknown(code);
            }
            return system.getProjection();
        } catch (Proj4jException | IllegalStateException e) {
            throw unknown(code).causedBy(e);
        }
    }

    private EllipsoidShape ellipsoid() {
        return EllipsoidShape.of(projection().getEllipsoid());
    }

    /** {@return the EPSG code} */
    public int epsgCode() {
        return code;
    }

    /** {@return authority and number, such as "EPSG:7854"} */
    public String codeText() {
        return "EPSG:" + code;
    }

    /** {@return the name in the EPSG dataset} */
    public String name() {
        return names().projected();
    }

    /** Looked up when they are asked for: most runs never do, and the lists are long. */
    private ReferenceNames names() {
        return ReferenceNames.of(code);
    }

    /**
     * The place on the Earth of a point in the plane.
     *
     * @param x easting (m)
     * @param y northing (m)
     * @return longitude and latitude on the datum of this system
     * @throws SpatialFormatException if the projection has no such point
     */
    public GeographicPosition toGeographic(double x, double y) {
        if (!Double.isFinite(x + y)) {
            throw outside("x " + x + ", y " + y);
        }
        ProjCoordinate result = new ProjCoordinate();
        try {
            projection().inverseProject(new ProjCoordinate(x, y), result);
        } catch (Proj4jException e) {
            throw outside("x " + x + ", y " + y).causedBy(e);
        }
        if (!Double.isFinite(result.x + result.y) || Math.abs(result.y) > 90) {
            throw outside("x " + x + ", y " + y);
        }
        return new GeographicPosition(result.x, result.y);
    }

    /**
     * The point in the plane of a place on the Earth.
     *
     * @param longitude degrees east of Greenwich, on the datum of this system
     * @param latitude degrees north of the equator
     * @return easting and northing (m)
     * @throws SpatialFormatException if the projection does not reach there
     */
    public Position toPlane(double longitude, double latitude) {
        if (!(Math.abs(longitude) <= 360 && Math.abs(latitude) <= 90)) {
            throw outside("longitude " + longitude + ", latitude " + latitude);
        }
        ProjCoordinate result = new ProjCoordinate();
        try {
            projection().project(new ProjCoordinate(longitude, latitude), result);
        } catch (Proj4jException e) {
            throw outside("longitude " + longitude + ", latitude " + latitude).causedBy(e);
        }
        if (!Double.isFinite(result.x + result.y)) {
            throw outside("longitude " + longitude + ", latitude " + latitude);
        }
        return new Position(result.x, result.y);
    }

    /** {@return the system as WKT 1, with the EPSG code at its end} */
    public String wellKnownText() {
        return WellKnownText.of(code, names(), definition, ellipsoid());
    }

    /**
     * The attributes of a CF grid mapping variable (CF 1.8, section 5.6 and appendix F): texts, {@link Double} and, for
     * two standard parallels, {@code double[2]}.
     *
     * @return attributes in order, crs_wkt and spatial_ref with the text of {@link #wellKnownText()} among them
     */
    public Map<String, Object> gridMapping() {
        Map<String, Object> attributes = new LinkedHashMap<>();
        attributes.put("grid_mapping_name", definition.kind().gridMappingName());
        for (Parameter parameter : definition.kind().parameters(definition)) {
            if (!parameter.gridMappingName().isEmpty()) {
                attributes.put(parameter.gridMappingName(), parameter.value());
            }
        }
        addStandardParallels(attributes);
        attributes.put("false_easting", definition.falseEasting());
        attributes.put("false_northing", definition.falseNorthing());
        EllipsoidShape ellipsoid = ellipsoid();
        attributes.put("semi_major_axis", ellipsoid.semiMajorAxis());
        attributes.put("inverse_flattening", ellipsoid.inverseFlattening());
        attributes.put("longitude_of_prime_meridian", 0.0);
        attributes.put("reference_ellipsoid_name", ellipsoid.name());
        attributes.put("prime_meridian_name", "Greenwich");
        ReferenceNames names = names();
        attributes.put("horizontal_datum_name", names.datum());
        attributes.put("geographic_crs_name", names.geographic());
        attributes.put("projected_crs_name", names.projected());
        attributes.put("crs_wkt", wellKnownText());
        // The name under which GDAL looks for the same text.
        attributes.put("spatial_ref", wellKnownText());
        return attributes;
    }

    /** CF asks a Lambert conformal projection with one parallel for that parallel or a scale; we give both. */
    private void addStandardParallels(Map<String, Object> attributes) {
        switch (definition.kind()) {
            case ALBERS_EQUAL_AREA, LAMBERT_CONFORMAL_TWO_PARALLELS ->
                attributes.put(
                        "standard_parallel", new double[] {definition.firstParallel(), definition.secondParallel()});
            case LAMBERT_CONFORMAL_ONE_PARALLEL -> attributes.put("standard_parallel", definition.firstParallel());
            case TRANSVERSE_MERCATOR, LAMBERT_AZIMUTHAL_EQUAL_AREA -> {
                // These have none.
            }
        }
    }

    /** Systems of one code are the same. */
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof CoordinateReference reference && reference.code == code;
    }

    @Override
    public int hashCode() {
        return code;
    }

    @Override
    public String toString() {
        return codeText() + " (" + name() + ")";
    }

    private SpatialFormatException outside(String found) {
        return SpatialFormatException.of(codeText(), found, "places that the projection reaches");
    }

    private static SpatialFormatException unknown(int code) {
        return SpatialFormatException.of("EPSG:" + code, "a code that is not in the EPSG dataset", "a known EPSG code");
    }
}
