package org.headfall.scenarios.siting;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
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

    /** A sentence for each boundary that sites stand near, about all of them. */
    static List<String> sentences(FlowProblem problem, List<Site> sites) {
        List<String> sentences = new ArrayList<>();
        RectilinearGrid grid = problem.aquifer().grid();
        for (OuterBoundary boundary : problem.boundaries()) {
            if (boundary instanceof OuterBoundary.FixedHead) {
                sentence(grid, boundary, sites).ifPresent(sentences::add);
            }
        }
        return sentences;
    }

    private static Optional<String> sentence(RectilinearGrid grid, OuterBoundary boundary, List<Site> sites) {
        List<String> numbers = new ArrayList<>();
        List<String> distances = new ArrayList<>();
        for (Site site : sites) {
            double distance = distance(grid, boundary.segment(), site);
            if (distance < NEAR_CELLS * Math.sqrt(grid.area(site.cell()))) {
                numbers.add(String.valueOf(site.number()));
                distances.add(String.format(Locale.ROOT, "%.1f", distance / METRES_PER_KILOMETRE));
            }
        }
        return numbers.isEmpty()
                ? Optional.empty()
                : Optional.of((numbers.size() == 1 ? "New site " : "New sites ") + joined(numbers)
                        + (numbers.size() == 1 ? " stands " : " stand ")
                        + joined(alike(distances) ? distances.subList(0, 1) : distances)
                        + " km from '" + boundary.name() + "', whose head is fixed: this boundary gives whatever is"
                        + " asked of it, so effects and lift there are only as true as that.");
    }

    private static boolean alike(List<String> words) {
        return words.stream().distinct().count() == 1;
    }

    private static String joined(List<String> words) {
        int last = words.size() - 1;
        return last == 0 ? words.get(0) : String.join(", ", words.subList(0, last)) + " and " + words.get(last);
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
