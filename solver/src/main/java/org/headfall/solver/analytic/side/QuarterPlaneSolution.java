package org.headfall.solver.analytic.side;

import static org.headfall.solver.analytic.side.ImagePlacement.inside;

import org.headfall.solver.analytic.DrawdownField;
import org.headfall.solver.analytic.PumpedBore;
import org.headfall.solver.analytic.UnboundedSolution;

/**
 * Drawdown in the quarter-plane {@code x >= 0, y >= 0} with straight sides along both axes: the bore and three images,
 * each with the product of the signs of its reflections.
 *
 * <p>Source: Ferris and others (1962), Theory of aquifer tests, USGS Water-Supply Paper 1536-E, image-well theory.
 *
 * @param unbounded the aquifer without sides; if anisotropic, with axes along the sides
 * @param sideAtX what holds at {@code x = 0}
 * @param sideAtY what holds at {@code y = 0}
 */
public record QuarterPlaneSolution(UnboundedSolution unbounded, SideCondition sideAtX, SideCondition sideAtY)
        implements DrawdownField {

    /** Checks that the aquifer can be mirrored. */
    public QuarterPlaneSolution {
        ImagePlacement.mirrorSymmetric(unbounded);
    }

    @Override
    public double drawdown(PumpedBore bore, double x, double y, double time) {
        inside("y", y, Double.POSITIVE_INFINITY);
        inside("y of the bore", bore.y(), Double.POSITIVE_INFINITY);
        PumpedBore mirrored = new PumpedBore(bore.x(), -bore.y(), bore.rates());
        DrawdownField halfPlane = new HalfPlaneSolution(unbounded, sideAtX);
        return halfPlane.drawdown(bore, x, y, time) + sideAtY.imageSign() * halfPlane.drawdown(mirrored, x, y, time);
    }
}
