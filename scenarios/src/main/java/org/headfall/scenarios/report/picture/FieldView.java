package org.headfall.scenarios.report.picture;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import org.headfall.scenarios.report.content.FieldMap;
import org.headfall.scenarios.report.content.LimitOutcome;
import org.headfall.scenarios.report.content.ReportContent;
import org.headfall.scenarios.report.content.Site;
import org.headfall.scenarios.report.content.SiteKind;

/**
 * The part of the map that a picture shows, and values between cell centres.
 *
 * @param map the field
 * @param west western edge (m)
 * @param north northern edge (m)
 * @param metresPerPixel scale (m)
 */
record FieldView(FieldMap map, double west, double north, double metresPerPixel) {

    private static final double LEAST_RIM = 1000;
    private static final double RIM = 0.35;

    /**
     * A view of the proposed bores or, without any, of all pumped bores or all sites, and of the places where limits are
     * crossed, with room around them.
     */
    static FieldView about(ReportContent content, int width, int height) {
        FieldMap map = content.map();
        List<Site> sites = content.sites();
        List<Site> proposed = sites.stream().filter(Site::proposed).toList();
        List<Site> pumped = sites.stream()
                .filter(site -> site.kind() == SiteKind.PUMPED_BORE)
                .toList();
        List<Site> some = proposed.isEmpty() ? pumped : proposed;
        List<Site> shown = some.isEmpty() ? sites : some;
        List<double[]> crossed = crossedPlaces(content);
        double[] x = shown.isEmpty()
                ? map.x()
                : DoubleStream.concat(
                                shown.stream().mapToDouble(Site::x),
                                crossed.stream().mapToDouble(place -> place[0]))
                        .toArray();
        double[] y = shown.isEmpty()
                ? map.y()
                : DoubleStream.concat(
                                shown.stream().mapToDouble(Site::y),
                                crossed.stream().mapToDouble(place -> place[1]))
                        .toArray();
        double west = Arrays.stream(x).min().orElse(0);
        double east = Arrays.stream(x).max().orElse(0);
        double south = Arrays.stream(y).min().orElse(0);
        double north = Arrays.stream(y).max().orElse(0);
        double rim = Math.max(LEAST_RIM, RIM * Math.max(east - west, north - south));
        double scale = Math.max((east - west + 2 * rim) / width, (north - south + 2 * rim) / height);
        return new FieldView(
                map, (west + east) / 2 - scale * width / 2, (south + north) / 2 + scale * height / 2, scale);
    }

    /** Easting and northing of the sites, or cells of the map, where limits are crossed. */
    private static List<double[]> crossedPlaces(ReportContent content) {
        List<double[]> places = new ArrayList<>();
        for (LimitOutcome limit : content.limits()) {
            if (limit.crossedOn() != null && Double.isFinite(limit.x())) {
                places.add(new double[] {limit.x(), limit.y()});
            } else if (limit.crossedOn() != null) {
                content.sites().stream()
                        .filter(site -> site.name().equals(limit.site()))
                        .forEach(site -> places.add(new double[] {site.x(), site.y()}));
            }
        }
        return places;
    }

    double pixelX(double x) {
        return (x - west) / metresPerPixel;
    }

    double pixelY(double y) {
        return (north - y) / metresPerPixel;
    }

    /** Value between the four centres about a place; NaN outside the grid or beside a missing value. */
    static double between(FieldMap map, float[] values, double x, double y) {
        double[] column = place(map.x(), x);
        double[] row = place(map.y(), y);
        if (values.length == 0 || Double.isNaN(column[0]) || Double.isNaN(row[0])) {
            return Double.NaN;
        }
        int width = map.x().length;
        int at = ((int) row[0]) * width + (int) column[0];
        double lower = values[at] * (1 - column[1]) + values[at + 1] * column[1];
        double upper = values[at + width] * (1 - column[1]) + values[at + width + 1] * column[1];
        return lower * (1 - row[1]) + upper * row[1];
    }

    /** Index of the centre before a coordinate and the share of the way to the next. */
    private static double[] place(double[] centres, double value) {
        int last = centres.length - 1;
        if (last < 1 || !(value >= centres[0] && value <= centres[last])) {
            return new double[] {Double.NaN, 0};
        }
        int found = Arrays.binarySearch(centres, value);
        int before = Math.min(last - 1, found >= 0 ? found : -found - 2);
        return new double[] {before, (value - centres[before]) / (centres[before + 1] - centres[before])};
    }
}
