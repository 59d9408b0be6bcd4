package org.headfall.scenarios.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.aquifer.OuterBoundary;
import org.headfall.solver.aquifer.Side;
import org.headfall.solver.aquifer.SideSegment;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.nearfield.NearField;

/**
 * Bores that stand close to a side of the aquifer at which the near field of the solver is not mirrored
 * ({@link NearField#unmirroredSides}): a side that is not straight, has a far head close by, or is of fixed head and within
 * some 5 % of a cell. There, against image wells (Ferris and others 1962), steady on cells of one size, 5 %, 20 % and half of a
 * cell from a side that no water crosses, drawdown at the bore is too small by 9.5 %, 3.8 % and 0.5 %; in a cell of a side of
 * fixed head it is up to 60 % wrong, in the next cell 0.2 %.
 */
public final class BoresBesideSides {

    /** Share of a cell from a closed side on which a bore is within the bar of accuracy. */
    private static final double FAR_ENOUGH = 0.5;

    private final Aquifer aquifer;
    private final RectilinearGrid grid;
    private final List<OuterBoundary> boundaries;

    private BoresBesideSides(FlowProblem problem) {
        aquifer = problem.aquifer();
        grid = aquifer.grid();
        boundaries = problem.boundaries();
    }

    /**
     * A sentence for each bore that stands too close to a side.
     *
     * @param problem the problem
     * @return the sentences, in the order of its bores
     */
    public static List<String> sentences(FlowProblem problem) {
        BoresBesideSides sides = new BoresBesideSides(problem);
        List<String> sentences = new ArrayList<>();
        for (Bore bore : problem.bores()) {
            sides.add(bore, sentences);
        }
        return sentences;
    }

    private void add(Bore bore, List<String> sentences) {
        int cell = grid.locate(bore.x(), bore.y());
        for (Side side : NearField.unmirroredSides(aquifer, boundaries, bore.x(), bore.y(), bore.screenRadius())
                .keySet()) {
            double distance = distance(bore, cell, side);
            double width = side.countedByRow()
                    ? grid.x().width(grid.column(cell))
                    : grid.y().width(grid.row(cell));
            if (held(cell, side)) {
                sentences.add(String.format(
                        Locale.ROOT,
                        "%s stands in a cell of the %s side, whose head is fixed: its drawdown and its effects may be off by"
                                + " more than half. Place the side farther out, or use cells smaller than %.3g m there.",
                        bore.name(),
                        side.name().toLowerCase(Locale.ROOT),
                        0.5 * distance));
            } else if (closed(cell, side) && distance < FAR_ENOUGH * width) {
                sentences.add(String.format(
                        Locale.ROOT,
                        "%s stands %.3g m from the %s edge of the aquifer in a cell %.3g m wide: its drawdown may be up to 10 %%"
                                + " too small. Cells up to %.3g m wide there would do.",
                        bore.name(),
                        distance,
                        side.name().toLowerCase(Locale.ROOT),
                        width,
                        distance / FAR_ENOUGH));
            }
        }
    }

    private double distance(Bore bore, int cell, Side side) {
        int column = grid.column(cell);
        int row = grid.row(cell);
        return switch (side) {
            case WEST -> bore.x() - grid.x().edge(column);
            case EAST -> grid.x().edge(column + 1) - bore.x();
            case SOUTH -> bore.y() - grid.y().edge(row);
            case NORTH -> grid.y().edge(row + 1) - bore.y();
        };
    }

    /** Whether the face of a cell on a side is the rim of the grid, or leads to a cell outside the aquifer. */
    private boolean closed(int cell, Side side) {
        int column = grid.column(cell);
        int row = grid.row(cell);
        return switch (side) {
            case WEST -> column == 0 || !aquifer.active()[cell - 1];
            case EAST -> column + 1 == grid.columns() || !aquifer.active()[cell + 1];
            case SOUTH -> row == 0 || !aquifer.active()[cell - grid.columns()];
            case NORTH -> row + 1 == grid.rows() || !aquifer.active()[cell + grid.columns()];
        };
    }

    private boolean held(int cell, Side side) {
        return boundaries.stream()
                .filter(OuterBoundary.FixedHead.class::isInstance)
                .map(OuterBoundary::segment)
                .anyMatch(segment -> segment.side() == side && holds(segment, cell));
    }

    private boolean holds(SideSegment segment, int cell) {
        for (int place = 0; place < segment.length(); place++) {
            if (segment.cell(grid, place) == cell) {
                return true;
            }
        }
        return false;
    }
}
