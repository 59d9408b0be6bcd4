package org.headfall.solver.analytic.function;

/**
 * The well function of a leaky aquifer, {@code W(u, b)}, the integral of {@code exp(-y - b²/(4y))/y} from {@code u} to
 * infinity, where {@code b = r/B} is the distance in units of the leakage factor.
 *
 * <p>Drawdown is {@code Q/(4 pi T) W(u, r/B)} with {@code u = r² S/(4 T t)} and {@code B = sqrt(T c)}, where the sealing
 * bed has the hydraulic resistance c, stores no water and has a fixed head above it. Relative accuracy 1e-12.
 *
 * <p>Source: Hantush and Jacob (1955), Transactions AGU 36, 95-100. The quadrature is the double exponential rule for
 * exponentially decaying integrands of Takahasi and Mori (1974), Publ. RIMS Kyoto 9, 721-741.
 */
public final class LeakyWellFunction {
    private static final double STEP = 0.15;
    private static final double FIRST_NODE = -4.2;
    private static final double LARGEST_BEFORE_UNDERFLOW = 745;

    private LeakyWellFunction() {}

    /**
     * The value of {@code W(u, b)}.
     *
     * @param u the argument, not negative; zero gives the steady value {@code 2 K0(b)}
     * @param distanceOverLeakageFactor {@code b = r/B}, not negative; zero gives the function of Theis
     * @return {@code W(u, b)}, dimensionless
     * @throws IllegalArgumentException if an argument is negative or not finite, or both are zero
     */
    public static double of(double u, double distanceOverLeakageFactor) {
        Argument.notNegative("u", u);
        double b = Argument.notNegative("distance over leakage factor", distanceOverLeakageFactor);
        if (b == 0) {
            return WellFunction.of(u);
        }
        if (u >= b / 2) {
            return tail(u, b);
        }
        // Reciprocity keeps the quadrature on the side where the integrand only falls.
        double mirrored = b / (2 * u) * (b / 2);
        return 2 * ModifiedBessel.k0(b) - tail(mirrored, b);
    }

    /**
     * The integral for {@code u >= b/2}, with {@code y = u + t} and {@code t = scale exp(x - exp(-x))}:
     * {@code exp(-u - c)} times the integral of {@code exp(-t + c t/(u + t))/(u + t)}, {@code c = b²/(4u)}.
     */
    private static double tail(double u, double b) {
        double c = b / (2 * u) * (b / 2);
        if (u + c > LARGEST_BEFORE_UNDERFLOW) {
            return 0;
        }
        double scale = Math.min(u, 1);
        double sum = 0;
        double term = 0;
        for (int n = 0; n * STEP < -FIRST_NODE || term > 1e-18 * sum; n++) {
            double x = FIRST_NODE + n * STEP;
            double decay = Math.exp(-x);
            double t = scale * Math.exp(x - decay);
            double y = u + t;
            term = Math.exp(-t + c * t / y) / y * t * (1 + decay);
            sum += term;
        }
        return STEP * sum * Math.exp(-u - c);
    }
}
