package org.headfall.scenarios.reference;

import java.math.BigDecimal;
import java.math.MathContext;
import org.locationtech.proj4j.datum.Ellipsoid;

/**
 * The figure of the Earth below a projection.
 *
 * @param name its name
 * @param semiMajorAxis equatorial radius (m)
 * @param inverseFlattening a / (a - b); 0 for a sphere, as WKT has it
 */
record EllipsoidShape(String name, double semiMajorAxis, double inverseFlattening) {
    /** proj4j keeps the polar radius; what is lost by going back lies beyond these digits. */
    private static final MathContext KEPT_DIGITS = new MathContext(12);

    /** Name and flattening as the EPSG dataset has them; from the radii for the rarer ones. */
    static EllipsoidShape of(Ellipsoid ellipsoid) {
        double a = ellipsoid.getA();
        return switch (ellipsoid.getShortName()) {
            case "GRS80" -> new EllipsoidShape("GRS 1980", a, 298.257222101);
            case "WGS84" -> new EllipsoidShape("WGS 84", a, 298.257223563);
            case "airy" -> new EllipsoidShape("Airy 1830", a, 299.3249646);
            case "intl" -> new EllipsoidShape("International 1924", a, 297);
            case "bessel" -> new EllipsoidShape("Bessel 1841", a, 299.1528128);
            case "krass" -> new EllipsoidShape("Krassowsky 1940", a, 298.3);
            default -> new EllipsoidShape(ellipsoid.getName(), a, inverseFlattening(a, ellipsoid.getB()));
        };
    }

    private static double inverseFlattening(double a, double b) {
        return a == b ? 0 : new BigDecimal(a / (a - b)).round(KEPT_DIGITS).doubleValue();
    }
}
