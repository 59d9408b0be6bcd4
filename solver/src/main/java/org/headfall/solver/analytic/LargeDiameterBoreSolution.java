package org.headfall.solver.analytic;

import static org.headfall.solver.analytic.function.Argument.notNegative;
import static org.headfall.solver.analytic.function.Argument.positive;

import org.headfall.solver.analytic.function.LargeDiameterWellFunction;
import org.headfall.solver.schedule.StepSchedule;

/**
 * Drawdown inside a pumped bore whose casing holds water that counts: {@code s_w = Q/(4 pi T) F(u_w, alpha)}.
 *
 * <p>Unbounded confined aquifer, no well loss. From {@code t = 250 r_c²/T} on it is the solution of Theis to 0.2 percent.
 *
 * <p>Source: Papadopulos and Cooper (1967), Water Resources Research 3(1), 241-244.
 *
 * @param transmissivity T (m²/d), positive
 * @param storativity S, positive
 * @param screenRadius radius r_w at which the aquifer begins (m), positive
 * @param casingRadius radius r_c of the casing where the level moves (m), positive
 */
public record LargeDiameterBoreSolution(
        double transmissivity, double storativity, double screenRadius, double casingRadius) {

    /** Checks the properties. */
    public LargeDiameterBoreSolution {
        positive("transmissivity", transmissivity);
        positive("storativity", storativity);
        positive("radius of the screen", screenRadius);
        positive("radius of the casing", casingRadius);
    }

    /**
     * Drawdown in the bore at a constant rate since time zero.
     *
     * @param rate rate taken out (m³/d)
     * @param time time since pumping began (d), not negative
     * @return drawdown (m)
     * @throws IllegalArgumentException if the time is negative
     */
    public double drawdown(double rate, double time) {
        if (notNegative("time", time) == 0) {
            return 0;
        }
        double storedPerHead = screenRadius * screenRadius * storativity;
        double u = storedPerHead / (4 * transmissivity * time);
        double alpha = storedPerHead / (casingRadius * casingRadius);
        return rate / (4 * Math.PI * transmissivity) * LargeDiameterWellFunction.of(u, alpha);
    }

    /**
     * Drawdown in the bore at a rate that changes in steps, recovery included.
     *
     * @param rates rate taken out (m³/d), zero before the first step
     * @param time days on the clock of the rates
     * @return drawdown (m)
     */
    public double drawdown(StepSchedule rates, double time) {
        return Superposition.of(rates, time, since -> drawdown(1, since));
    }
}
