package org.headfall.solver.bore;

import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BracketingNthOrderBrentSolver;

/**
 * Head that the aquifer must offer at the wall of a bore for it to give a discharge: head that carries the bore's water to
 * the level it needs, and the loss on the way in.
 *
 * @param level level needed in the bore
 * @param loss head lost between the wall and the inside of the bore
 * @param column water that fills the bore
 */
public record NeededHead(NeededLevel level, WellLoss loss, WaterColumn column) {

    private static final int MOST_EVALUATIONS = 1000;
    private static final double RELATIVE_ACCURACY = 1e-12;

    /**
     * The head.
     *
     * @param discharge discharge (m³/d)
     * @return head at the wall (m above datum)
     */
    public double at(double discharge) {
        return column.head(level.at(discharge)) + loss.at(discharge);
    }

    /**
     * Rise of the head with discharge.
     *
     * @param discharge discharge (m³/d)
     * @return slope (d/m²), not negative
     */
    public double slope(double discharge) {
        return column.densityRatio() * level.slope(discharge) + loss.slope(discharge);
    }

    /**
     * Discharge of the bore where head at its wall falls evenly with its discharge.
     *
     * @param undisturbed head at the wall while the bore gives nothing (m above datum)
     * @param response fall of the head per discharge (d/m²), positive
     * @param most largest discharge (m³/d), may be infinite
     * @return the discharge (m³/d): zero where head is too low for any
     */
    public double discharge(double undisturbed, double response, double most) {
        UnivariateFunction missing = discharge -> at(discharge) + response * discharge - undisturbed;
        if (most <= 0 || missing.value(0) >= 0) {
            return 0;
        }
        // The bore's own response alone would use up the head that is there.
        double limit = Math.min(most, -missing.value(0) / response);
        if (missing.value(limit) <= 0) {
            return limit;
        }
        return new BracketingNthOrderBrentSolver(RELATIVE_ACCURACY, RELATIVE_ACCURACY * limit, 0, 5)
                .solve(MOST_EVALUATIONS, missing, 0, limit);
    }
}
