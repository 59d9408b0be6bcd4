package org.headfall.solver.analytic.side;

import static org.headfall.solver.analytic.function.Argument.positive;

import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * The capture zone of a bore in a steady, uniform regional flow: where the water it pumps comes from.
 *
 * <p>The bore stands at the origin and the regional flow goes towards positive x. The dividing line between the water
 * that reaches the bore and the rest is {@code x = y/tan(2 pi T i y/Q)}.
 *
 * <p>Source: Bear (1979), Hydraulics of groundwater, chapter 8; Grubb (1993), Ground Water 31(1), 27-32.
 *
 * @param transmissivity T (m²/d), positive
 * @param gradient slope i of the head before pumping (m/m), positive
 * @param rate Q taken out (m³/d), positive
 */
public record BoreInUniformFlow(double transmissivity, double gradient, double rate) {

    private static final double ANGLE_ACCURACY = 1e-15;
    private static final int MOST_EVALUATIONS = 200;

    /** Checks the properties. */
    public BoreInUniformFlow {
        positive("transmissivity", transmissivity);
        positive("gradient", gradient);
        positive("rate", rate);
    }

    /** Distance down-gradient of the bore at which the water stands still, {@code Q/(2 pi T i)} (m). */
    public double stagnationDistance() {
        return rate / (2 * Math.PI * transmissivity * gradient);
    }

    /** Width of the capture zone far up-gradient, {@code Q/(T i)} (m). */
    public double captureWidth() {
        return rate / (transmissivity * gradient);
    }

    /** Width of the capture zone abreast of the bore, {@code Q/(2 T i)} (m). */
    public double widthAtBore() {
        return captureWidth() / 2;
    }

    /**
     * Width of the capture zone on a line across the flow.
     *
     * @param x distance of the line down-gradient of the bore (m), negative up-gradient
     * @return width (m), zero from the stagnation point on
     */
    public double widthAt(double x) {
        double scaled = x / stagnationDistance();
        if (scaled >= 1) {
            return 0;
        }
        // y = angle/(2 pi T i/Q), where cos(angle) - x/x_s sin(angle)/angle falls from 1 - x/x_s to -1.
        double angle = new BrentSolver(ANGLE_ACCURACY, ANGLE_ACCURACY)
                .solve(MOST_EVALUATIONS, theta -> dividingLine(theta, scaled), 0, Math.PI);
        return 2 * angle * stagnationDistance();
    }

    private static double dividingLine(double angle, double scaledDistance) {
        double sineRatio = angle == 0 ? 1 : Math.sin(angle) / angle;
        return Math.cos(angle) - scaledDistance * sineRatio;
    }

    /**
     * Time in which water reaches the bore along the axis of the flow,
     * {@code (n b/(T i)) (L - x_s ln(1 + L/x_s))}.
     *
     * @param distance distance L up-gradient of the bore (m), positive
     * @param drainableThickness effective porosity n times thickness b of the aquifer (m), positive
     * @return travel time (d)
     * @throws IllegalArgumentException if an argument is not positive
     */
    public double travelTime(double distance, double drainableThickness) {
        double stagnation = stagnationDistance();
        double effective = positive("distance", distance) - stagnation * Math.log1p(distance / stagnation);
        return positive("porosity times thickness", drainableThickness) * effective / (transmissivity * gradient);
    }
}
