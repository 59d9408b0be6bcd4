package org.headfall.solver.analytic.function;

import org.apache.commons.math3.complex.Complex;

/**
 * The drawdown function {@code F(u, alpha)} inside a pumped bore whose casing holds water that counts.
 *
 * <p>Drawdown in the bore is {@code Q/(4 pi T) F(u, alpha)} with {@code u = r_w² S/(4 T t)} and
 * {@code alpha = r_w² S/r_c²}, r_w the radius of the screen and r_c that of the casing where the level moves. At first
 * all water comes from the casing and {@code F = alpha/u}; late it is the well function of Theis. Relative accuracy 1e-9.
 *
 * <p>Source: Papadopulos and Cooper (1967), Water Resources Research 3(1), 241-244; evaluated from the Laplace transform
 * in {@code 1/(4u)}, {@code 2 K0(q)/(p (p/(2 alpha) K0(q) + q K1(q)))} with {@code q = sqrt p}.
 */
public final class LargeDiameterWellFunction {
    private LargeDiameterWellFunction() {}

    /**
     * The value of {@code F(u, alpha)}.
     *
     * @param u dimensionless inverse time, positive
     * @param alpha storage of the aquifer relative to that of the casing, positive
     * @return {@code F(u, alpha)}, dimensionless
     * @throws IllegalArgumentException if an argument is not positive
     */
    public static double of(double u, double alpha) {
        Argument.positive("alpha", alpha);
        return LaplaceInversion.at(0.25 / Argument.positive("u", u), p -> transform(p, alpha));
    }

    private static Complex transform(Complex p, double alpha) {
        Complex root = p.sqrt();
        Complex fromCasing = p.divide(2 * alpha);
        Complex fromAquifer = root.multiply(ComplexModifiedBessel.at(root).ratio());
        return new Complex(2).divide(p.multiply(fromCasing.add(fromAquifer)));
    }
}
