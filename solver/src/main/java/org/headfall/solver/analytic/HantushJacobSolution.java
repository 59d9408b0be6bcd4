package org.headfall.solver.analytic;

import static org.headfall.solver.analytic.function.Argument.notNegative;
import static org.headfall.solver.analytic.function.Argument.positive;

import org.headfall.solver.analytic.function.LeakyWellFunction;

/**
 * Drawdown around a bore in a leaky aquifer whose sealing bed stores no water:
 * {@code s = Q/(4 pi T) W(r² S/(4 T t), r/B)}, {@code B = sqrt(T c)}; the head above the bed is fixed.
 *
 * <p>Within 0.15 percent of {@linkplain #steady() its steady state} for {@code t > 5 S c} and {@code r <= B}.
 *
 * <p>Source: Hantush and Jacob (1955), Transactions AGU 36, 95-100.
 *
 * @param transmissivity T (m²/d), positive
 * @param storativity S, positive
 * @param hydraulicResistance c, thickness of the sealing bed over its vertical conductivity (d), positive
 */
public record HantushJacobSolution(double transmissivity, double storativity, double hydraulicResistance)
        implements RadialSolution {

    /** Checks the properties. */
    public HantushJacobSolution {
        positive("transmissivity", transmissivity);
        positive("storativity", storativity);
        positive("hydraulic resistance", hydraulicResistance);
    }

    /** The drawdown this one ends in. */
    public DeGleeSolution steady() {
        return new DeGleeSolution(transmissivity, hydraulicResistance);
    }

    @Override
    public double drawdown(double rate, double distance, double time) {
        positive("distance", distance);
        if (notNegative("time", time) == 0) {
            return 0;
        }
        double u = distance * distance * storativity / (4 * transmissivity * time);
        double scaled = distance / Math.sqrt(transmissivity * hydraulicResistance);
        return rate / (4 * Math.PI * transmissivity) * LeakyWellFunction.of(u, scaled);
    }
}
