package org.headfall.solver.analytic;

import static org.headfall.solver.analytic.function.Argument.notNegative;
import static org.headfall.solver.analytic.function.Argument.positive;

import org.apache.commons.math3.complex.Complex;
import org.headfall.solver.analytic.function.ComplexModifiedBessel;
import org.headfall.solver.analytic.function.LaplaceInversion;
import org.headfall.solver.analytic.function.ModifiedBessel;

/**
 * Discharge of a free-flowing bore in an unbounded leaky aquifer whose sealing bed stores no water.
 *
 * <p>The Laplace transform of discharge is {@code 2 pi T s_w r_w q K1(q r_w)/(p K0(q r_w))} with
 * {@code q² = p S/T + 1/B²}, {@code B = sqrt(T c)}; the head above the bed is fixed and the drawdown s_w in the bore is held
 * constant from time zero.
 *
 * <p>Source: Hantush (1959), Nonsteady flow to flowing wells in leaky aquifers, Journal of Geophysical Research 64(8).
 *
 * @param transmissivity T (m²/d), positive
 * @param storativity S, positive
 * @param hydraulicResistance c, thickness of the sealing bed over its vertical conductivity (d), positive
 * @param boreRadius r_w (m), positive
 */
public record LeakyFreeFlowingBoreSolution(
        double transmissivity, double storativity, double hydraulicResistance, double boreRadius) {

    /** Checks the properties. */
    public LeakyFreeFlowingBoreSolution {
        positive("transmissivity", transmissivity);
        positive("storativity", storativity);
        positive("hydraulic resistance", hydraulicResistance);
        positive("radius of the bore", boreRadius);
    }

    /**
     * Discharge at a time after the bore was opened.
     *
     * @param drawdown shut-in level less outlet level (m), not negative: a free-flowing bore takes no water in
     * @param time time since the bore was opened (d), positive
     * @return discharge (m³/d)
     * @throws IllegalArgumentException if the drawdown is negative or the time is not positive
     */
    public double discharge(double drawdown, double time) {
        return conductance(drawdown) * LaplaceInversion.at(time, this::transform);
    }

    /**
     * Discharge in the end, {@code 2 pi T s_w (r_w/B) K1(r_w/B)/K0(r_w/B)}.
     *
     * @param drawdown shut-in level less outlet level (m), not negative
     * @return discharge (m³/d)
     * @throws IllegalArgumentException if the drawdown is negative
     */
    public double steadyDischarge(double drawdown) {
        double scaled = boreRadius / Math.sqrt(transmissivity * hydraulicResistance);
        return conductance(drawdown) * scaled * ModifiedBessel.scaledK1(scaled) / ModifiedBessel.scaledK0(scaled);
    }

    private double conductance(double drawdown) {
        return 2 * Math.PI * transmissivity * notNegative("drawdown", drawdown);
    }

    private Complex transform(Complex p) {
        double leakageFactorSquare = transmissivity * hydraulicResistance;
        Complex scaledRadius = p.multiply(storativity / transmissivity)
                .add(1 / leakageFactorSquare)
                .sqrt()
                .multiply(boreRadius);
        return scaledRadius
                .multiply(ComplexModifiedBessel.at(scaledRadius).ratio())
                .divide(p);
    }
}
