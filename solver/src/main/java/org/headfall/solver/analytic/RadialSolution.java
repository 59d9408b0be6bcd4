package org.headfall.solver.analytic;

import org.headfall.solver.schedule.StepSchedule;

/** Drawdown around a bore that depends on the distance from it, not on the direction. */
public interface RadialSolution extends UnboundedSolution {

    /**
     * Drawdown at a distance from a bore pumped at a constant rate since time zero.
     *
     * @param rate rate taken out (m³/d)
     * @param distance distance from the axis of the bore (m), positive; the radius of the bore for the bore itself
     * @param time time since pumping began (d), not negative
     * @return drawdown (m)
     * @throws IllegalArgumentException if the distance is not positive or the time is negative
     */
    double drawdown(double rate, double distance, double time);

    /**
     * Drawdown at a distance from a bore whose rate changes in steps, recovery included.
     *
     * @param rates rate taken out (m³/d), zero before the first step
     * @param distance distance from the axis of the bore (m), positive
     * @param time days on the clock of the rates
     * @return drawdown (m)
     * @throws IllegalArgumentException if the distance is not positive
     */
    default double drawdown(StepSchedule rates, double distance, double time) {
        return Superposition.of(rates, time, since -> drawdown(1, distance, since));
    }

    @Override
    default double drawdown(double rate, double offsetX, double offsetY, double time) {
        return drawdown(rate, Math.hypot(offsetX, offsetY), time);
    }
}
