package org.headfall.scenarios.reference;

import java.util.List;

/** The projections that a scenario may use, with their names in CF (1.8, appendix F) and in WKT 1 (OGC 01-009). */
enum ProjectionKind {
    TRANSVERSE_MERCATOR("transverse_mercator", "Transverse_Mercator"),
    ALBERS_EQUAL_AREA("albers_conical_equal_area", "Albers_Conic_Equal_Area"),
    LAMBERT_CONFORMAL_ONE_PARALLEL("lambert_conformal_conic", "Lambert_Conformal_Conic_1SP"),
    LAMBERT_CONFORMAL_TWO_PARALLELS("lambert_conformal_conic", "Lambert_Conformal_Conic_2SP"),
    LAMBERT_AZIMUTHAL_EQUAL_AREA("lambert_azimuthal_equal_area", "Lambert_Azimuthal_Equal_Area");

    private final String gridMappingName;
    private final String wellKnownName;

    ProjectionKind(String gridMappingName, String wellKnownName) {
        this.gridMappingName = gridMappingName;
        this.wellKnownName = wellKnownName;
    }

    String gridMappingName() {
        return gridMappingName;
    }

    String wellKnownName() {
        return wellKnownName;
    }

    /**
     * One number of a projection.
     *
     * @param gridMappingName name in CF; empty where CF has it in another parameter
     * @param wellKnownName name in WKT 1
     * @param value degrees, metres or a ratio
     */
    record Parameter(String gridMappingName, String wellKnownName, double value) {}

    /** The numbers of this projection, in the order in which WKT lists them. */
    List<Parameter> parameters(ProjectionDefinition definition) {
        double latitude = definition.latitudeOfOrigin();
        double longitude = definition.centralLongitude();
        double scale = definition.scale();
        return switch (this) {
            case TRANSVERSE_MERCATOR ->
                List.of(
                        new Parameter("latitude_of_projection_origin", "latitude_of_origin", latitude),
                        new Parameter("longitude_of_central_meridian", "central_meridian", longitude),
                        new Parameter("scale_factor_at_central_meridian", "scale_factor", scale));
            case ALBERS_EQUAL_AREA ->
                List.of(
                        new Parameter("latitude_of_projection_origin", "latitude_of_center", latitude),
                        new Parameter("longitude_of_central_meridian", "longitude_of_center", longitude),
                        new Parameter("", "standard_parallel_1", definition.firstParallel()),
                        new Parameter("", "standard_parallel_2", definition.secondParallel()));
            case LAMBERT_CONFORMAL_ONE_PARALLEL ->
                List.of(
                        new Parameter("latitude_of_projection_origin", "latitude_of_origin", latitude),
                        new Parameter("longitude_of_central_meridian", "central_meridian", longitude),
                        new Parameter("scale_factor_at_projection_origin", "scale_factor", scale));
            case LAMBERT_CONFORMAL_TWO_PARALLELS ->
                List.of(
                        new Parameter("latitude_of_projection_origin", "latitude_of_origin", latitude),
                        new Parameter("longitude_of_central_meridian", "central_meridian", longitude),
                        new Parameter("", "standard_parallel_1", definition.firstParallel()),
                        new Parameter("", "standard_parallel_2", definition.secondParallel()));
            case LAMBERT_AZIMUTHAL_EQUAL_AREA ->
                List.of(
                        new Parameter("latitude_of_projection_origin", "latitude_of_center", latitude),
                        new Parameter("longitude_of_projection_origin", "longitude_of_center", longitude));
        };
    }
}
