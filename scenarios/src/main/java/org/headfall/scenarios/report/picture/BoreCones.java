package org.headfall.scenarios.report.picture;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.headfall.scenarios.report.content.FieldMap;
import org.headfall.scenarios.report.content.Hydrograph;
import org.headfall.scenarios.report.content.ReportContent;
import org.headfall.scenarios.report.content.Site;
import org.headfall.scenarios.report.content.SiteKind;

/**
 * Head close to bores: heads of cells say nothing of the last metres, where head runs down to that at the wall with the
 * logarithm of distance (Thiem 1906). It does so here within a cell of a bore.
 */
final class BoreCones {

    /** Radius that the wall of a bore is drawn at (m). */
    private static final double WALL = 0.1;

    private final List<Cone> cones = new ArrayList<>();

    /**
     * A bore.
     *
     * @param x easting (m)
     * @param y northing (m)
     * @param reach width of its cell (m)
     * @param start head at its wall at the start (m above datum)
     * @param end head at its wall at the end (m above datum)
     */
    record Cone(double x, double y, double reach, double start, double end) {

        private double distance(double toX, double toY) {
            return Math.hypot(x - toX, y - toY);
        }

        private double head(double distance, double wall, double head) {
            double share = Math.log(Math.max(WALL, distance) / WALL) / Math.log(reach / WALL);
            return wall + share * (head - wall);
        }
    }

    BoreCones(ReportContent content) {
        for (Site site : content.sites()) {
            if (site.kind() != SiteKind.SPRING && site.kind() != SiteKind.PROTECTED_POINT) {
                content.hydrographs().stream()
                        .filter(hydrograph ->
                                hydrograph.site().equals(site.name()) && hydrograph.aquiferHead().length > 0)
                        .findFirst()
                        .ifPresent(hydrograph -> cones.add(cone(content.map(), site, hydrograph)));
            }
        }
    }

    private static Cone cone(FieldMap map, Site site, Hydrograph hydrograph) {
        float[] heads = hydrograph.aquiferHead();
        double reach = Math.max(width(map.x(), site.x()), width(map.y(), site.y()));
        return new Cone(site.x(), site.y(), Math.max(2 * WALL, reach), heads[0], heads[heads.length - 1]);
    }

    private static double width(double[] centres, double value) {
        int found = Arrays.binarySearch(centres, value);
        int before = Math.max(0, Math.min(centres.length - 2, found >= 0 ? found : -found - 2));
        return centres.length > 1 ? centres[before + 1] - centres[before] : 0;
    }

    /** Bores, in the order of the sites. */
    List<Cone> cones() {
        return cones;
    }

    /** Head at the start (m above datum) where cells say another. */
    double start(double x, double y, double head) {
        return head(x, y, head, true);
    }

    /** Head at the end (m above datum) where cells say another. */
    double end(double x, double y, double head) {
        return head(x, y, head, false);
    }

    private double head(double x, double y, double head, boolean atStart) {
        double nearest = Double.POSITIVE_INFINITY;
        double found = head;
        for (Cone cone : cones) {
            double distance = cone.distance(x, y);
            double wall = atStart ? cone.start() : cone.end();
            if (distance < cone.reach() && distance < nearest && Double.isFinite(wall)) {
                nearest = distance;
                found = cone.head(distance, wall, head);
            }
        }
        return found;
    }
}
