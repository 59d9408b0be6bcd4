package org.headfall.solver.bore;

/**
 * Friction of flow in a full round pipe, as the friction factor f of Darcy and Weisbach times the squared Reynolds number:
 * {@code loss = f Re² L nu² / (2 g D³)}. In this form friction grows with the flow in every regime and is smooth:
 *
 * <ul>
 *   <li>laminar, Re up to 2,000: f = 64/Re (Hagen and Poiseuille);
 *   <li>turbulent, Re from 4,000: {@code 1/sqrt f = -2 log10(k/(3.7 D) + 2.51/(Re sqrt f))} (Colebrook 1939, J. Inst.
 *       Civ. Eng. 11, 133-156), solved by Newton's method;
 *   <li>between them, where flow is unsteady and no formula holds, the cubic in Re that has the value and the slope of
 *       either neighbour at its ends (Hermite).
 * </ul>
 */
final class PipeFriction {

    private static final double LAMINAR_UP_TO = 2000;
    private static final double TURBULENT_FROM = 4000;
    private static final double LAMINAR = 64;
    private static final int MOST_ITERATIONS = 30;
    private static final double TWO_OVER_LN_10 = 2 / Math.log(10);

    private PipeFriction() {}

    /**
     * {@code f Re²}.
     *
     * @param reynolds Reynolds number (-), not negative
     * @param relativeRoughness height of the roughness over the diameter (-)
     * @return {@code f Re²} (-)
     */
    static double number(double reynolds, double relativeRoughness) {
        if (reynolds <= LAMINAR_UP_TO) {
            return LAMINAR * reynolds;
        }
        if (reynolds >= TURBULENT_FROM) {
            return turbulent(reynolds, relativeRoughness);
        }
        double width = TURBULENT_FROM - LAMINAR_UP_TO;
        double s = (reynolds - LAMINAR_UP_TO) / width;
        return LAMINAR * LAMINAR_UP_TO * (1 + s * s * (2 * s - 3))
                + LAMINAR * width * s * (1 - s) * (1 - s)
                + turbulent(TURBULENT_FROM, relativeRoughness) * s * s * (3 - 2 * s)
                + turbulentSlope(TURBULENT_FROM, relativeRoughness) * width * s * s * (s - 1);
    }

    /**
     * Increase of {@link #number} with the Reynolds number.
     *
     * @param reynolds Reynolds number (-), not negative
     * @param relativeRoughness height of the roughness over the diameter (-)
     * @return {@code d(f Re²)/dRe} (-), positive
     */
    static double slope(double reynolds, double relativeRoughness) {
        if (reynolds <= LAMINAR_UP_TO) {
            return LAMINAR;
        }
        if (reynolds >= TURBULENT_FROM) {
            return turbulentSlope(reynolds, relativeRoughness);
        }
        double width = TURBULENT_FROM - LAMINAR_UP_TO;
        double s = (reynolds - LAMINAR_UP_TO) / width;
        double rise = turbulent(TURBULENT_FROM, relativeRoughness) - LAMINAR * LAMINAR_UP_TO;
        return rise * 6 * s * (1 - s) / width
                + LAMINAR * (1 - s) * (1 - 3 * s)
                + turbulentSlope(TURBULENT_FROM, relativeRoughness) * s * (3 * s - 2);
    }

    private static double turbulent(double reynolds, double relativeRoughness) {
        double x = inverseRoot(reynolds, relativeRoughness);
        return reynolds * reynolds / (x * x);
    }

    /** By the derivative of Colebrook's equation, with x = 1/sqrt f. */
    private static double turbulentSlope(double reynolds, double relativeRoughness) {
        double x = inverseRoot(reynolds, relativeRoughness);
        double smooth = 2.51 / reynolds;
        double pull = TWO_OVER_LN_10 * smooth / (relativeRoughness / 3.7 + smooth * x);
        double rise = pull * x / reynolds / (1 + pull);
        return 2 * reynolds / (x * x) * (1 - reynolds * rise / x);
    }

    /** {@code 1/sqrt f} of Colebrook's equation; Newton's method from Haaland's (1983) explicit formula. */
    private static double inverseRoot(double reynolds, double relativeRoughness) {
        double x = -1.8 * Math.log10(Math.pow(relativeRoughness / 3.7, 1.11) + 6.9 / reynolds);
        double smooth = 2.51 / reynolds;
        double change = Double.POSITIVE_INFINITY;
        for (int i = 0; i < MOST_ITERATIONS && Math.abs(change) > 1e-14 * x; i++) {
            double inside = relativeRoughness / 3.7 + smooth * x;
            change = -(x + 2 * Math.log10(inside)) / (1 + TWO_OVER_LN_10 * smooth / inside);
            x += change;
        }
        return x;
    }
}
