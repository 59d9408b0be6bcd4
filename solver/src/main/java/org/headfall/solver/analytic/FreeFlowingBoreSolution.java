package org.headfall.solver.analytic;

import static org.headfall.solver.analytic.function.Argument.notNegative;
import static org.headfall.solver.analytic.function.Argument.positive;

import org.headfall.solver.analytic.function.FreeFlowFunction;

/**
 * Discharge of a free-flowing bore in an unbounded aquifer without leakage: {@code Q = 2 pi T s_w G(T t/(S r_w²))}.
 *
 * <p>The drawdown s_w in the bore is held constant from time zero: shut-in level less outlet level, no well loss.
 *
 * <p>Source: Jacob and Lohman (1952), Transactions AGU 33(4), 559-569.
 *
 * @param transmissivity T (m²/d), positive
 * @param storativity S, positive
 * @param boreRadius r_w (m), positive
 */
public record FreeFlowingBoreSolution(double transmissivity, double storativity, double boreRadius) {

    /** Checks the properties. */
    public FreeFlowingBoreSolution {
        positive("transmissivity", transmissivity);
        positive("storativity", storativity);
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
        double alpha = transmissivity * positive("time", time) / (storativity * boreRadius * boreRadius);
        return 2 * Math.PI * transmissivity * notNegative("drawdown", drawdown) * FreeFlowFunction.of(alpha);
    }
}
