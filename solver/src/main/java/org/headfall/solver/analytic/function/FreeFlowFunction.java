package org.headfall.solver.analytic.function;

import org.apache.commons.math3.complex.Complex;

/**
 * The discharge function of a free-flowing bore, {@code G(alpha)}, which falls slowly as the cone of depression grows.
 *
 * <p>A bore of radius r held at the drawdown s from time zero discharges {@code 2 pi T s G(alpha)} with
 * {@code alpha = T t/(S r²)}. Relative accuracy 1e-11.
 *
 * <p>Source: Jacob and Lohman (1952), Transactions AGU 33(4), 559-569; evaluated from the Laplace transform
 * {@code K1(sqrt p)/(sqrt p K0(sqrt p))}.
 */
public final class FreeFlowFunction {
    private FreeFlowFunction() {}

    /**
     * The value of {@code G(alpha)}.
     *
     * @param alpha dimensionless time, positive
     * @return {@code G(alpha)}, dimensionless
     * @throws IllegalArgumentException if {@code alpha} is not positive
     */
    public static double of(double alpha) {
        return LaplaceInversion.at(Argument.positive("alpha", alpha), FreeFlowFunction::transform);
    }

    private static Complex transform(Complex p) {
        Complex root = p.sqrt();
        return ComplexModifiedBessel.at(root).ratio().divide(root);
    }
}
