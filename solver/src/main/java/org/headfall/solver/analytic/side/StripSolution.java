package org.headfall.solver.analytic.side;

import static org.headfall.solver.analytic.side.ImagePlacement.inside;

import org.headfall.solver.analytic.DrawdownField;
import org.headfall.solver.analytic.PumpedBore;
import org.headfall.solver.analytic.Superposition;
import org.headfall.solver.analytic.UnboundedSolution;
import org.headfall.solver.analytic.function.Argument;
import org.headfall.solver.wording.PlainNumber;

/**
 * Drawdown in the strip {@code 0 <= x <= width} between two parallel sides: the bore and an endless row of images at
 * {@code 2 n width ± x0}, each with the product of the signs of its reflections.
 *
 * <p>The row is added up outwards until the images no longer matter. Their number grows with the square root of time, so
 * that aquifer and time must leave some end to their reach.
 *
 * <p>Source: Ferris and others (1962), Theory of aquifer tests, USGS Water-Supply Paper 1536-E, image-well theory.
 *
 * @param unbounded the aquifer without sides; if anisotropic, with axes along the sides
 * @param width distance between the sides (m), positive
 * @param first what holds at {@code x = 0}
 * @param second what holds at {@code x = width}
 */
public record StripSolution(UnboundedSolution unbounded, double width, SideCondition first, SideCondition second)
        implements DrawdownField {

    private static final double NEGLIGIBLE = 1e-14;
    private static final int MOST_REFLECTIONS = 100_000;

    /** Checks the width and that the aquifer can be mirrored. */
    public StripSolution {
        ImagePlacement.mirrorSymmetric(unbounded);
        Argument.positive("width", width);
    }

    @Override
    public double drawdown(PumpedBore bore, double x, double y, double time) {
        inside("x", x, width);
        inside("x of the bore", bore.x(), width);
        double offsetY = y - bore.y();
        return Superposition.of(bore.rates(), time, since -> rowOfImages(bore.x(), x, offsetY, since));
    }

    private double rowOfImages(double boreX, double x, double offsetY, double time) {
        double direct = unbounded.drawdown(1, x - boreX, offsetY, time);
        double sum = direct + first.imageSign() * unbounded.drawdown(1, x + boreX, offsetY, time);
        int rowSign = 1;
        for (int n = 1; n <= MOST_REFLECTIONS; n++) {
            double shift = 2 * n * width;
            // The nearest image of this order stands at shift - boreX, then come shift + boreX and their like on the
            // left.
            double nearest = unbounded.drawdown(1, x + boreX - shift, offsetY, time);
            sum += rowSign * second.imageSign() * nearest;
            rowSign *= first.imageSign() * second.imageSign();
            sum += rowSign * unbounded.drawdown(1, x - boreX - shift, offsetY, time);
            sum += rowSign * unbounded.drawdown(1, x - boreX + shift, offsetY, time);
            sum += rowSign * first.imageSign() * unbounded.drawdown(1, x + boreX + shift, offsetY, time);
            if (nearest <= NEGLIGIBLE * direct) {
                return sum;
            }
        }
        throw new IllegalArgumentException(
                "time must be shorter for a strip " + PlainNumber.of(width) + " m wide, or the aquifer leaky: "
                        + MOST_REFLECTIONS + " reflections do not suffice at " + PlainNumber.of(time) + " d");
    }
}
