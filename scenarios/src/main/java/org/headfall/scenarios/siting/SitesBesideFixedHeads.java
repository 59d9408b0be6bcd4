package org.headfall.scenarios.siting;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.aquifer.SideSegment;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.RectilinearGrid;

/**
 * Sites so near a boundary of fixed head that it feeds them: it gives whatever is asked, so a search finds them good, and
 * they are as good as that assumption. How near is common practice, no source.
 */
final class SitesBesideFixedHeads {

    private static final double NEAR_CELLS = 5;
    private static final double METRES_PER_KILOMETRE = 1000;

    private SitesBesideFixedHeads() {}

    /** A sentence for each site and boundary that stand near each other. */
    static List<String> sentences(FlowProblem problem, List<Site> sites) {
        List<String> sentences = new ArrayList<>();
        RectilinearGrid grid = problem.aquifer().grid();
        for (Site site : sites) {
            double near = NEAR_CELLS * Math.sqrt(grid.area(site.cell()));
            for (OuterBoundary boundary : problem.boundaries()) {
                double distance = boundary instanceof OuterBoundary.FixedHead
                        ? distance(grid, boundary.segment(), site)
                        : Double.POSITIVE_INFINITY;
                if (distance < near) {
                    sentences.add(String.format(
                            Locale.ROOT,
                            "%s stands %.1f km from '%s', whose head is fixed: this boundary gives whatever is asked of it, so"
                                    + " effects and lift there are only as true as that.",
                            site.name(),
                            distance / METRES_PER_KILOMETRE,
                            boundary.name()));
                }
            }
        }
        return sentences;
    }

    /** Distance of a site to the nearest cell of a segment, counted to the side itself (m). */
    private static double distance(RectilinearGrid grid, SideSegment segment, Site site) {
        double least = Double.POSITIVE_INFINITY;
        for (int place = 0; place < segment.length(); place++) {
            int cell = segment.cell(grid, place);
            double across = segment.side().countedByRow()
                    ? Math.abs(site.x() - rim(grid.x().start(), grid.x().end(), grid.centreX(cell)))
                    : Math.abs(site.y() - rim(grid.y().start(), grid.y().end(), grid.centreY(cell)));
            double along =
                    segment.side().countedByRow() ? site.y() - grid.centreY(cell) : site.x() - grid.centreX(cell);
            least = Math.min(least, Math.hypot(across, along));
        }
        return least;
    }

    private static double rim(double start, double end, double centre) {
        return centre - start < end - centre ? start : end;
    }
}
