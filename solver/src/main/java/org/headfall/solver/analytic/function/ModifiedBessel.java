package org.headfall.solver.analytic.function;

/**
 * The modified Bessel functions I0, I1, K0 and K1 of a real argument, to a relative accuracy of 1e-13.
 *
 * <p>K0 and K1 shape steady drawdown under a leaky sealing bed. Source of the formulas: NIST Digital Library of
 * Mathematical Functions, equations 10.25.2 (I) and 10.32.9 (K).
 */
public final class ModifiedBessel {
    private static final double LARGEST_BEFORE_UNDERFLOW = 745;

    private ModifiedBessel() {}

    /**
     * The function of the first kind and order zero.
     *
     * @param x the argument, not negative
     * @return I0(x)
     * @throws IllegalArgumentException if {@code x} is negative or not finite
     */
    public static double i0(double x) {
        return powerSeries(Argument.notNegative("x", x), 0, 1);
    }

    /**
     * The function of the first kind and order one.
     *
     * @param x the argument, not negative
     * @return I1(x)
     * @throws IllegalArgumentException if {@code x} is negative or not finite
     */
    public static double i1(double x) {
        return powerSeries(Argument.notNegative("x", x), 1, x / 2);
    }

    /**
     * The function of the second kind and order zero.
     *
     * @param x the argument, positive
     * @return K0(x)
     * @throws IllegalArgumentException if {@code x} is not positive or not finite
     */
    public static double k0(double x) {
        return Math.exp(-x) * scaledK0(x);
    }

    /**
     * The function of the second kind and order one.
     *
     * @param x the argument, positive
     * @return K1(x)
     * @throws IllegalArgumentException if {@code x} is not positive or not finite
     */
    public static double k1(double x) {
        return Math.exp(-x) * scaledK1(x);
    }

    /**
     * {@code exp(x) K0(x)}, which does not underflow.
     *
     * @param x the argument, positive
     * @return the scaled function
     * @throws IllegalArgumentException if {@code x} is not positive or not finite
     */
    public static double scaledK0(double x) {
        return scaledIntegral(Argument.positive("x", x), 0);
    }

    /**
     * {@code exp(x) K1(x)}, which does not underflow.
     *
     * @param x the argument, positive
     * @return the scaled function
     * @throws IllegalArgumentException if {@code x} is not positive or not finite
     */
    public static double scaledK1(double x) {
        return scaledIntegral(Argument.positive("x", x), 1);
    }

    /** Sum of {@code first (x²/4)^n / (n! (order+1)...(order+n))}; all terms are positive, so nothing cancels. */
    private static double powerSeries(double x, int order, double first) {
        double quarterSquare = x * x / 4;
        double term = first;
        double sum = 0;
        for (int n = 1; term > 1e-17 * sum; n++) {
            sum += term;
            term *= quarterSquare / ((double) n * (n + order));
        }
        return sum;
    }

    /**
     * The integral of {@code exp(-x (cosh t - 1)) cosh(order t)} over positive t by the trapezoidal rule, which converges
     * geometrically because the integrand is analytic and vanishes doubly exponentially. For large x it narrows to a
     * Gaussian of width 1/sqrt(x), and the step follows it.
     */
    private static double scaledIntegral(double x, int order) {
        double step = Math.min(0.2, 0.6 / Math.sqrt(x));
        double sum = 0.5;
        for (int n = 1; ; n++) {
            double t = n * step;
            double halfSinh = Math.sinh(t / 2);
            double exponent = 2 * x * halfSinh * halfSinh;
            if (exponent - order * t > LARGEST_BEFORE_UNDERFLOW) {
                return sum * step;
            }
            double term = Math.exp(-exponent) * (order == 0 ? 1 : Math.cosh(t));
            sum += term;
            if (term < 1e-18 * sum) {
                return sum * step;
            }
        }
    }
}
