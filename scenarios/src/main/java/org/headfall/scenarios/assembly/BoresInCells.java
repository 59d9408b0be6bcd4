package org.headfall.scenarios.assembly;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Comparator;
import java.util.List;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;
import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.scenarios.scenario.BoreSpecification;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.nearfield.NearField;
import org.headfall.solver.nearfield.UnresolvedDrawdown;

/**
 * Whether bores are narrow enough for their cells: at the wall head stands lower than what the cells show. And whether what
 * neighbours do to each other can be told from the transmissivity of their cells.
 */
final class BoresInCells {

    private static final int PAIRS_TOLD = 5;
    private static final MathContext ROUNDED_DOWN = new MathContext(3, RoundingMode.FLOOR);
    private static final MathContext ROUNDED_UP = new MathContext(2, RoundingMode.CEILING);
    private static final MathContext ROUNDED = new MathContext(3);

    private final FlowProblem problem;
    private final Problems problems;

    BoresInCells(FlowProblem problem, Problems problems) {
        this.problem = problem;
        this.problems = problems;
    }

    /** Reports every bore that is too wide, and remarks on neighbours; bores stand in the order of the problem. */
    void check(List<BoreSpecification> specifications) {
        List<Bore> bores = problem.bores();
        List<NearField> fields = problem.nearFields();
        boolean fit = true;
        for (int i = 0; i < fields.size(); i++) {
            double largest = fields.get(i).largestRadius();
            if (!(bores.get(i).screenRadius() < largest)) {
                fit = false;
                refuse(specifications.get(i), fields.get(i).cell(), largest);
            }
        }
        if (fit) {
            remarkOn(UnresolvedDrawdown.between(bores, fields).approximations(), specifications);
        }
    }

    private void refuse(BoreSpecification bore, int cell, double largest) {
        RectilinearGrid grid = problem.aquifer().grid();
        double width = grid.x().width(grid.column(cell));
        double height = grid.y().width(grid.row(cell));
        String found = "a screen_radius of " + text(bore.screenRadius(), ROUNDED) + " m in a cell of "
                + text(width, ROUNDED) + " m by " + text(height, ROUNDED) + " m";
        String allowed = largest > 0
                ? "a radius below " + text(largest, ROUNDED_DOWN) + " m, or cells here at least "
                        + text(bore.screenRadius() / largest * Math.min(width, height), ROUNDED_UP)
                        + " m wide (grid.refine.down_to)"
                : "a bore farther from the side of the aquifer, or other cells";
        problems.add(bore.place(), "bore " + bore.name(), Finding.of(ProblemKind.OUT_OF_RANGE, found, allowed));
    }

    private void remarkOn(
            List<UnresolvedDrawdown.Approximation> approximations, List<BoreSpecification> specifications) {
        List<UnresolvedDrawdown.Approximation> largestFirst = approximations.stream()
                .sorted(Comparator.comparingDouble(BoresInCells::change).reversed())
                .toList();
        for (UnresolvedDrawdown.Approximation one :
                largestFirst.subList(0, Math.min(PAIRS_TOLD, largestFirst.size()))) {
            BoreSpecification bore = specifications.get(one.bore());
            String more = approximations.size() > PAIRS_TOLD && one.equals(largestFirst.get(0))
                    ? "; the largest of " + approximations.size() + " such pairs"
                    : "";
            problems.notice(
                    bore.place(),
                    "bores " + specifications.get(one.other()).name() + " and " + bore.name()
                            + " lower head at each other by an approximate "
                            + text(DischargeUnit.LITRES_PER_SECOND.per(change(one)), ROUNDED)
                            + " m per L/s: T jumps between them"
                            + more);
        }
    }

    private static double change(UnresolvedDrawdown.Approximation one) {
        return Math.abs(one.taken() - one.estimated());
    }

    private static String text(double value, MathContext digits) {
        return new BigDecimal(value).round(digits).stripTrailingZeros().toPlainString();
    }
}
