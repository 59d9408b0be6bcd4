package org.headfall.solver.bore;

/**
 * Head lost between the aquifer at the bore wall and the water in the bore: {@code B Q + C Q²} (Jacob 1947). Only the
 * loss of the bore itself: the aquifer's part of B in a step test is computed by the model and must not be entered
 * again.
 *
 * @param linear B (d/m²), not negative
 * @param quadratic C (d²/m⁵), not negative
 */
public record WellLoss(double linear, double quadratic) {

    /** No loss. */
    public static final WellLoss NONE = new WellLoss(0, 0);

    /** Checks the coefficients. */
    public WellLoss {
        if (!(linear >= 0 && quadratic >= 0 && Double.isFinite(linear) && Double.isFinite(quadratic))) {
            throw new IllegalArgumentException("well-loss coefficients must not be negative, found B " + linear
                    + " d/m2 and C " + quadratic + " d2/m5");
        }
    }

    /** Loss (m) at a discharge (m³/d). */
    public double at(double discharge) {
        return discharge * (linear + quadratic * discharge);
    }

    /** Increase of the loss with discharge (d/m²). */
    public double slope(double discharge) {
        return linear + 2 * quadratic * discharge;
    }
}
