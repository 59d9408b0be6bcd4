package org.headfall.solver.analytic.function;

import org.headfall.solver.wording.PlainNumber;

/**
 * The well function of Theis, {@code W(u) = E1(u)}, the integral of {@code exp(-y)/y} from {@code u} to infinity.
 *
 * <p>Drawdown at distance r and time t of a bore pumped at rate Q is {@code Q/(4 pi T) W(u)} with
 * {@code u = r² S/(4 T t)}. Relative accuracy 1e-13.
 *
 * <p>Source: Theis (1935), Transactions AGU 16, 519-524; the series is equation 5.1.11 and the continued fraction equation
 * 5.1.22 of Abramowitz and Stegun (1964), the latter contracted to its even part.
 */
public final class WellFunction {
    private static final double EULER = 0.5772156649015329;
    private static final double ROUND_OFF = 1e-17;
    private static final double LARGEST_BEFORE_UNDERFLOW = 745;

    private WellFunction() {}

    /**
     * The value of {@code W(u)}.
     *
     * @param u the argument, positive; infinity is allowed and gives zero
     * @return {@code W(u)}, dimensionless
     * @throws IllegalArgumentException if {@code u} is not positive
     */
    public static double of(double u) {
        if (!(u > 0)) {
            throw new IllegalArgumentException("u must be positive, found " + PlainNumber.of(u));
        }
        if (u > LARGEST_BEFORE_UNDERFLOW) {
            return 0;
        }
        return u <= 1 ? series(u) : continuedFraction(u);
    }

    /** {@code -gamma - ln u + u - u²/(2 2!) + u³/(3 3!) - ...}. */
    private static double series(double u) {
        double sum = 0;
        double power = 1;
        for (int n = 1; Math.abs(power) > ROUND_OFF; n++) {
            power *= -u / n;
            sum -= power / n;
        }
        return sum - EULER - Math.log(u);
    }

    /** {@code exp(-u) (1/(u+1 - 1/(u+3 - 4/(u+5 - ...))))}, evaluated forward by Lentz's method. */
    private static double continuedFraction(double u) {
        double denominator = u + 1;
        double numeratorRatio = Double.MAX_VALUE;
        double denominatorRatio = 1 / denominator;
        double fraction = denominatorRatio;
        double change = 0;
        for (int n = 1; Math.abs(change - 1) > 1e-16; n++) {
            double partial = -(double) n * n;
            denominator += 2;
            denominatorRatio = 1 / (denominator + partial * denominatorRatio);
            numeratorRatio = denominator + partial / numeratorRatio;
            change = numeratorRatio * denominatorRatio;
            fraction *= change;
        }
        return fraction * Math.exp(-u);
    }
}
