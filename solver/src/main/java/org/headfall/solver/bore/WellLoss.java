package org.headfall.solver.bore;

import org.headfall.solver.wording.PlainNumber;

/**
 * Head lost between the aquifer at the bore wall and the water in the bore: {@code B Q + C Q^p}, with p = 2 after Jacob
 * (1947) or another exponent after Rorabaugh (1953, Proc. ASCE 79, separate 362), who found 1.5 to 3.5. Only the loss of
 * the bore itself: the aquifer's part of B in a step test is computed by the model and must not be entered again. Water
 * that is put in loses head the other way.
 *
 * @param linear B (d/m²), not negative
 * @param turbulent C (d^p/m^(3p-1); d²/m⁵ for p = 2), not negative
 * @param exponent p (-), from 1 to 4
 */
public record WellLoss(double linear, double turbulent, double exponent) {

    /** No loss. */
    public static final WellLoss NONE = new WellLoss(0, 0);

    private static final double LARGEST_EXPONENT = 4;

    /** Checks the coefficients. */
    public WellLoss {
        if (!(linear >= 0 && turbulent >= 0 && Double.isFinite(linear) && Double.isFinite(turbulent))) {
            throw new IllegalArgumentException(
                    "well-loss coefficients must not be negative, found B " + PlainNumber.of(linear) + " d/m2 and C "
                            + PlainNumber.of(turbulent) + " (d/m3 to the power p, times m)");
        }
        if (!(exponent >= 1 && exponent <= LARGEST_EXPONENT)) {
            throw new IllegalArgumentException("the exponent of well loss must lie between 1 and "
                    + PlainNumber.of(LARGEST_EXPONENT) + ", found " + PlainNumber.of(exponent));
        }
    }

    /**
     * {@code B Q + C Q²}.
     *
     * @param linear B (d/m²), not negative
     * @param quadratic C (d²/m⁵), not negative
     */
    public WellLoss(double linear, double quadratic) {
        this(linear, quadratic, 2);
    }

    /** The same loss with another part of B added (d/m²). */
    public WellLoss plusLinear(double more) {
        return new WellLoss(linear + more, turbulent, exponent);
    }

    /** Loss (m) at a discharge (m³/d); negative where water is put in. */
    public double at(double discharge) {
        return discharge * (linear + turbulent * power(Math.abs(discharge)));
    }

    /** Increase of the loss with discharge (d/m²). */
    public double slope(double discharge) {
        return linear + exponent * turbulent * power(Math.abs(discharge));
    }

    /** {@code Q^(p-1)}: exact, and quick, for the common exponent. */
    private double power(double discharge) {
        return exponent == 2 ? discharge : Math.pow(discharge, exponent - 1);
    }
}
