package org.headfall.scenarios.reference;

import java.math.BigDecimal;
import org.headfall.scenarios.reference.ProjectionKind.Parameter;

/** Writes a projected system as WKT 1 (OGC 01-009, clause 7) in the dialect that GDAL reads and writes. */
final class WellKnownText {
    private static final String WORLD_GEODETIC_SYSTEM = "World Geodetic System 1984";

    private final StringBuilder text = new StringBuilder();

    private WellKnownText() {}

    static String of(int code, ReferenceNames names, ProjectionDefinition projection, EllipsoidShape ellipsoid) {
        WellKnownText writer = new WellKnownText();
        writer.text.append("PROJCS[").append(quoted(names.projected())).append(',');
        writer.addGeographic(names, ellipsoid);
        writer.text
                .append(",PROJECTION[")
                .append(quoted(projection.kind().wellKnownName()))
                .append(']');
        for (Parameter parameter : projection.kind().parameters(projection)) {
            writer.addParameter(parameter.wellKnownName(), parameter.value());
        }
        writer.addParameter("false_easting", projection.falseEasting());
        writer.addParameter("false_northing", projection.falseNorthing());
        writer.text.append(",UNIT[\"metre\",1,AUTHORITY[\"EPSG\",\"9001\"]]");
        writer.text.append(",AXIS[\"Easting\",EAST],AXIS[\"Northing\",NORTH]");
        writer.addAuthority(Integer.toString(code));
        return writer.text.append(']').toString();
    }

    private void addGeographic(ReferenceNames names, EllipsoidShape ellipsoid) {
        // GDAL knows this one datum by another name than the EPSG dataset.
        String datum = names.datum().equals(WORLD_GEODETIC_SYSTEM)
                ? "WGS_1984"
                : names.datum().replace(' ', '_');
        text.append("GEOGCS[").append(quoted(names.geographic()));
        text.append(",DATUM[").append(quoted(datum));
        text.append(",SPHEROID[").append(quoted(ellipsoid.name())).append(',');
        text.append(plain(ellipsoid.semiMajorAxis())).append(',').append(plain(ellipsoid.inverseFlattening()));
        text.append("]],PRIMEM[\"Greenwich\",0],UNIT[\"degree\",0.0174532925199433]");
        names.geographicCode().ifPresent(this::addAuthority);
        text.append(']');
    }

    private void addParameter(String name, double value) {
        text.append(",PARAMETER[")
                .append(quoted(name))
                .append(',')
                .append(plain(value))
                .append(']');
    }

    private void addAuthority(String code) {
        text.append(",AUTHORITY[\"EPSG\",").append(quoted(code)).append(']');
    }

    private static String quoted(String value) {
        return "\"" + value.replace('"', '\'') + "\"";
    }

    private static String plain(double value) {
        return value == 0 ? "0" : BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }
}
