package org.headfall.solver.analytic.function;

/**
 * The early-time well function of an aquifer whose sealing bed gives up stored water, {@code H(u, beta)}: the integral of
 * {@code exp(-y)/y erfc(beta sqrt(u)/sqrt(y (y - u)))} from {@code u} to infinity.
 *
 * <p>Drawdown is {@code Q/(4 pi T) H(u, beta)} with {@code u = r² S/(4 T t)} and {@code beta = (r/4) sqrt(S'/(S T c))},
 * where S' is the storage coefficient and c the hydraulic resistance of the bed; valid for {@code t < c S'/10}, whatever
 * the condition above the bed. Relative accuracy 1e-10.
 *
 * <p>Source: Hantush (1960), Journal of Geophysical Research 65(11), 3713-3725.
 */
public final class StoringBedWellFunction {
    private static final double STEP = 0.125;
    private static final double NEGLIGIBLE_EXPONENT = 45;

    private StoringBedWellFunction() {}

    /**
     * The value of {@code H(u, beta)}, by the trapezoidal rule in the logarithm of {@code t = y - u}.
     *
     * @param u the argument, positive
     * @param beta storage of the bed relative to that of the aquifer, not negative; zero gives the function of Theis
     * @return {@code H(u, beta)}, dimensionless
     * @throws IllegalArgumentException if {@code u} is not positive or {@code beta} is negative
     */
    public static double of(double u, double beta) {
        Argument.positive("u", u);
        if (Argument.notNegative("beta", beta) == 0) {
            return WellFunction.of(u);
        }
        // The exponent of the integrand has a minimum of at most 2 beta, so beyond this t nothing is left.
        double largest = Math.log(NEGLIGIBLE_EXPONENT + 2 * beta);
        double smallest = Math.log(Math.min(u, 1)) - NEGLIGIBLE_EXPONENT;
        double sum = 0;
        double previous = 0;
        for (double logarithm = largest; logarithm > smallest; logarithm -= STEP) {
            double term = integrand(u, beta, Math.exp(logarithm));
            sum += term;
            if (term < previous && term < 1e-18 * sum) {
                break;
            }
            previous = term;
        }
        return STEP * sum * Math.exp(-u);
    }

    private static double integrand(double u, double beta, double t) {
        double y = u + t;
        return Math.exp(-t) * t / y * ErrorIntegral.complement(beta * Math.sqrt(u / (t * y)));
    }
}
