package org.headfall.solver.analytic;

import static org.headfall.solver.analytic.function.Argument.positive;

import org.headfall.solver.analytic.function.ModifiedBessel;

/**
 * Steady drawdown around a bore in a leaky aquifer: {@code s = Q/(2 pi T) K0(r/B)} with the leakage factor
 * {@code B = sqrt(T c)}; the head above the sealing bed is fixed.
 *
 * <p>Source: de Glee (1930), Over grondwaterstroomingen bij wateronttrekking door middel van putten; Jacob (1946).
 *
 * @param transmissivity T (m²/d), positive
 * @param hydraulicResistance c, thickness of the sealing bed over its vertical conductivity (d), positive
 */
public record DeGleeSolution(double transmissivity, double hydraulicResistance) {

    /** Checks the properties. */
    public DeGleeSolution {
        positive("transmissivity", transmissivity);
        positive("hydraulic resistance", hydraulicResistance);
    }

    /** Leakage factor {@code B = sqrt(T c)} (m), the distance over which leakage makes itself felt. */
    public double leakageFactor() {
        return Math.sqrt(transmissivity * hydraulicResistance);
    }

    /**
     * Steady drawdown.
     *
     * @param rate rate taken out (m³/d)
     * @param distance distance from the bore (m), positive
     * @return drawdown (m)
     * @throws IllegalArgumentException if the distance is not positive
     */
    public double drawdown(double rate, double distance) {
        double scaled = positive("distance", distance) / leakageFactor();
        return rate / (2 * Math.PI * transmissivity) * ModifiedBessel.k0(scaled);
    }

    /**
     * Share of the bore's rate that still flows in the aquifer at a distance, {@code (r/B) K1(r/B)}; the rest has leaked in
     * farther inside.
     *
     * @param distance distance from the bore (m), positive
     * @return share, from 1 at the bore to 0 far away
     * @throws IllegalArgumentException if the distance is not positive
     */
    public double shareInAquifer(double distance) {
        double scaled = positive("distance", distance) / leakageFactor();
        return scaled * ModifiedBessel.k1(scaled);
    }
}
