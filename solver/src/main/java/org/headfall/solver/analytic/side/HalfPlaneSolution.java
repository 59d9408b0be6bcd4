package org.headfall.solver.analytic.side;

import static org.headfall.solver.analytic.side.ImagePlacement.inside;

import org.headfall.solver.analytic.DrawdownField;
import org.headfall.solver.analytic.PumpedBore;
import org.headfall.solver.analytic.Superposition;
import org.headfall.solver.analytic.UnboundedSolution;

/**
 * Drawdown in the half-plane {@code x >= 0} with one straight side at {@code x = 0}: the bore and its mirror image.
 *
 * <p>Source: Ferris and others (1962), Theory of aquifer tests, USGS Water-Supply Paper 1536-E, image-well theory.
 *
 * @param unbounded the aquifer without sides; if anisotropic, with axes along the side
 * @param side what holds at {@code x = 0}
 */
public record HalfPlaneSolution(UnboundedSolution unbounded, SideCondition side) implements DrawdownField {

    /** Checks that the aquifer can be mirrored. */
    public HalfPlaneSolution {
        ImagePlacement.mirrorSymmetric(unbounded);
    }

    @Override
    public double drawdown(PumpedBore bore, double x, double y, double time) {
        inside("x", x, Double.POSITIVE_INFINITY);
        inside("x of the bore", bore.x(), Double.POSITIVE_INFINITY);
        double offsetY = y - bore.y();
        return Superposition.of(
                bore.rates(),
                time,
                since -> unbounded.drawdown(1, x - bore.x(), offsetY, since)
                        + side.imageSign() * unbounded.drawdown(1, x + bore.x(), offsetY, since));
    }
}
