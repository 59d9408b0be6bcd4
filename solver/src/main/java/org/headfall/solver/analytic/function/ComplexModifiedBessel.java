package org.headfall.solver.analytic.function;

import org.apache.commons.math3.complex.Complex;

/**
 * The modified Bessel functions K0 and K1 of one complex argument z in the right half-plane, both times {@code exp(z)} so
 * that neither underflows. Relative accuracy 1e-13.
 *
 * <p>Source: the ascending series, equations 9.6.11 and 9.6.13 of Abramowitz and Stegun (1964), within {@code |z| < 2};
 * outside it the second continued fraction of Steed's method as given by Temme (1975), Journal of Computational Physics
 * 19, 324-337, and Thompson and Barnett (1987), Computer Physics Communications 47, 245-257.
 *
 * @param scaledK0 {@code exp(z) K0(z)}
 * @param scaledK1 {@code exp(z) K1(z)}
 */
public record ComplexModifiedBessel(Complex scaledK0, Complex scaledK1) {
    private static final double EULER = 0.5772156649015329;
    private static final double ROUND_OFF = 1e-17;
    private static final double SERIES_RADIUS = 2;

    /**
     * Both functions at one argument.
     *
     * @param z the argument, with a positive real part
     * @return the scaled values
     * @throws IllegalArgumentException if the real part of {@code z} is not positive
     */
    public static ComplexModifiedBessel at(Complex z) {
        if (!(z.getReal() > 0)) {
            throw new IllegalArgumentException("z must have a positive real part, found " + z);
        }
        return z.abs() < SERIES_RADIUS ? series(z) : continuedFraction(z);
    }

    /** {@code K1(z)/K0(z)}. */
    public Complex ratio() {
        return scaledK1.divide(scaledK0);
    }

    /**
     * {@code K0 = -(ln(z/2) + gamma) I0 + sum of H_n w^n/n!²} and
     * {@code K1 = 1/z + ln(z/2) I1 - z/4 sum of (psi(n+1) + psi(n+2)) w^n/(n! (n+1)!)} with {@code w = z²/4}.
     */
    private static ComplexModifiedBessel series(Complex z) {
        Complex quarterSquare = z.multiply(z).divide(4);
        Complex logarithm = z.divide(2).log();
        Complex k0 = Complex.ZERO;
        Complex k1 = Complex.ONE.divide(z);
        Complex term = Complex.ONE;
        double harmonic = 0;
        for (int n = 0; term.abs() > ROUND_OFF; n++) {
            double psi = harmonic - EULER;
            double psiNext = psi + 1.0 / (n + 1);
            Complex termOfI1 = term.multiply(z).divide(2.0 * (n + 1));
            k0 = k0.add(term.multiply(logarithm.negate().add(psi)));
            k1 = k1.add(termOfI1.multiply(logarithm.subtract((psi + psiNext) / 2)));
            harmonic += 1.0 / (n + 1);
            term = term.multiply(quarterSquare).divide((n + 1.0) * (n + 1.0));
        }
        Complex scale = z.exp();
        return new ComplexModifiedBessel(k0.multiply(scale), k1.multiply(scale));
    }

    /** Steed's evaluation of {@code K1/K0} and, summed along with it, of the normalisation of K0. */
    private static ComplexModifiedBessel continuedFraction(Complex z) {
        Complex b = z.add(1).multiply(2);
        Complex d = b.reciprocal();
        Complex step = d;
        Complex fraction = d;
        Complex previous = Complex.ZERO;
        Complex current = Complex.ONE;
        double a = -0.25;
        double c = 0.25;
        Complex q = new Complex(c);
        Complex sum = q.multiply(step).add(1);
        Complex change = sum;
        for (int n = 2; change.abs() > ROUND_OFF * sum.abs(); n++) {
            a -= 2 * (n - 1);
            c *= -a / n;
            Complex next = previous.subtract(b.multiply(current)).divide(a);
            previous = current;
            current = next;
            q = q.add(next.multiply(c));
            b = b.add(2);
            d = b.add(d.multiply(a)).reciprocal();
            step = b.multiply(d).subtract(1).multiply(step);
            fraction = fraction.add(step);
            change = q.multiply(step);
            sum = sum.add(change);
        }
        Complex k0 = new Complex(Math.PI / 2).divide(z).sqrt().divide(sum);
        Complex k1 = k0.multiply(z.add(0.5).subtract(fraction.multiply(0.25))).divide(z);
        return new ComplexModifiedBessel(k0, k1);
    }
}
