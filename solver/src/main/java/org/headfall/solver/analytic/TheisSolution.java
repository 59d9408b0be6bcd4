package org.headfall.solver.analytic;

import static org.headfall.solver.analytic.function.Argument.notNegative;
import static org.headfall.solver.analytic.function.Argument.positive;

import org.headfall.solver.analytic.function.WellFunction;

/**
 * Drawdown around a bore in an unbounded, homogeneous, confined aquifer: {@code s = Q/(4 pi T) W(r² S/(4 T t))}.
 *
 * <p>Valid for a fully penetrating bore once the water of its casing no longer counts, {@code t > 25 r_c²/T} to 2 percent
 * and {@code t > 250 r_c²/T} to 0.2 percent.
 *
 * <p>Source: Theis (1935), Transactions AGU 16, 519-524.
 *
 * @param transmissivity T (m²/d), positive
 * @param storativity S, positive
 */
public record TheisSolution(double transmissivity, double storativity) implements RadialSolution {

    /** Checks the properties. */
    public TheisSolution {
        positive("transmissivity", transmissivity);
        positive("storativity", storativity);
    }

    @Override
    public double drawdown(double rate, double distance, double time) {
        positive("distance", distance);
        double u = distance * distance * storativity / (4 * transmissivity * notNegative("time", time));
        return rate / (4 * Math.PI * transmissivity) * WellFunction.of(u);
    }
}
