package org.headfall.solver.analytic.side;

import static org.headfall.solver.analytic.function.Argument.finite;
import static org.headfall.solver.analytic.function.Argument.notNegative;
import static org.headfall.solver.analytic.function.Argument.positive;

/**
 * The wave that a head {@code h0 sin(2 pi t/t0)} along a straight side sends into the half-plane beside it.
 *
 * <p>At distance x the head is {@code h0 exp(-d) sin(2 pi t/t0 - d)} with {@code d = x sqrt(pi S/(t0 T))}: weaker, and
 * later by {@code x sqrt(t0 S/(4 pi T))}. The state is periodic; the start has been forgotten.
 *
 * <p>Source: Ferris (1951), Cyclic fluctuations of water level as a basis for determining aquifer transmissibility.
 *
 * @param transmissivity T (m²/d), positive
 * @param storativity S, positive
 * @param period t0 (d), positive
 */
public record PeriodicSideHead(double transmissivity, double storativity, double period) {

    /** Checks the properties. */
    public PeriodicSideHead {
        positive("transmissivity", transmissivity);
        positive("storativity", storativity);
        positive("period", period);
    }

    /**
     * Amplitude at a distance over the amplitude at the side.
     *
     * @param distance distance from the side (m), not negative
     * @return ratio between 0 and 1
     * @throws IllegalArgumentException if the distance is negative
     */
    public double amplitudeRatio(double distance) {
        return Math.exp(-phase(distance));
    }

    /**
     * Time by which the wave arrives later than it passes the side.
     *
     * @param distance distance from the side (m), not negative
     * @return lag (d)
     * @throws IllegalArgumentException if the distance is negative
     */
    public double lag(double distance) {
        return phase(distance) * period / (2 * Math.PI);
    }

    /**
     * Head at a distance and time, relative to its mean.
     *
     * @param amplitude h0 at the side (m)
     * @param distance distance from the side (m), not negative
     * @param time time since the head at the side rose through its mean (d)
     * @return head above its mean (m)
     * @throws IllegalArgumentException if the distance is negative
     */
    public double headChange(double amplitude, double distance, double time) {
        double angle = 2 * Math.PI * finite("time", time) / period - phase(distance);
        return amplitude * amplitudeRatio(distance) * Math.sin(angle);
    }

    private double phase(double distance) {
        return notNegative("distance", distance) * Math.sqrt(Math.PI * storativity / (period * transmissivity));
    }
}
