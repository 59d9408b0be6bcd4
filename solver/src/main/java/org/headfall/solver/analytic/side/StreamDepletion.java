package org.headfall.solver.analytic.side;

import static org.headfall.solver.analytic.function.Argument.notNegative;
import static org.headfall.solver.analytic.function.Argument.positive;

import org.headfall.solver.analytic.Superposition;
import org.headfall.solver.analytic.function.ErrorIntegral;
import org.headfall.solver.schedule.StepSchedule;

/**
 * What a bore takes from a straight side of fixed head, such as a stream that cuts through the aquifer.
 *
 * <p>The rate is {@code Q erfc(z)} and the volume {@code Q t 4 i2erfc(z)} with {@code z = sqrt(F/(4t))},
 * {@code F = a² S/T}.
 *
 * <p>Source: Theis (1941); Glover and Balmer (1954); Jenkins (1968), USGS Techniques of Water-Resources Investigations,
 * Book 4, Chapter D1.
 *
 * @param transmissivity T (m²/d), positive
 * @param storativity S, positive
 * @param distance distance a from the bore to the side (m), positive
 */
public record StreamDepletion(double transmissivity, double storativity, double distance) {

    /** Checks the properties. */
    public StreamDepletion {
        positive("transmissivity", transmissivity);
        positive("storativity", storativity);
        positive("distance", distance);
    }

    /** The time {@code F = a² S/T} (d) that scales all others; the bore takes 48 percent from the side then. */
    public double depletionFactor() {
        return distance * distance * storativity / transmissivity;
    }

    /**
     * Share of a constant rate that comes from the side.
     *
     * @param time time since pumping began (d), not negative
     * @return share between 0 and 1
     * @throws IllegalArgumentException if the time is negative
     */
    public double rateShare(double time) {
        return notNegative("time", time) == 0 ? 0 : ErrorIntegral.complement(argument(time));
    }

    /**
     * Share of the volume pumped so far at a constant rate that has come from the side.
     *
     * @param time time since pumping began (d), not negative
     * @return share between 0 and 1
     * @throws IllegalArgumentException if the time is negative
     */
    public double volumeShare(double time) {
        return notNegative("time", time) == 0 ? 0 : ErrorIntegral.fourTimesSecondIntegral(argument(time));
    }

    /**
     * Rate taken from the side by a bore whose rate changes in steps; it goes on after the bore has stopped.
     *
     * @param rates rate taken out (m³/d), zero before the first step
     * @param time days on the clock of the rates
     * @return rate from the side (m³/d)
     */
    public double rate(StepSchedule rates, double time) {
        return Superposition.of(rates, time, this::rateShare);
    }

    /**
     * Volume taken from the side so far by a bore whose rate changes in steps.
     *
     * @param rates rate taken out (m³/d), zero before the first step
     * @param time days on the clock of the rates
     * @return volume from the side (m³)
     */
    public double volume(StepSchedule rates, double time) {
        return Superposition.of(rates, time, since -> since * volumeShare(since));
    }

    private double argument(double time) {
        return Math.sqrt(depletionFactor() / (4 * time));
    }
}
