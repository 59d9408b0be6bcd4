package org.headfall.solver.flow;

import java.util.Arrays;

/**
 * Discharge of every bore and spring in every time step of a run: the mean over each step, bores first, then springs.
 * What superposition of responses needs.
 */
public final class RateHistory {

    private final int points;
    private double[] days;
    private double[] rates;
    private int steps;

    /**
     * Empty history.
     *
     * @param points number of bores and springs
     * @param startDay day the first step begins
     */
    RateHistory(int points, double startDay) {
        this.points = points;
        days = new double[1024];
        rates = new double[1023 * points];
        days[0] = startDay;
    }

    /** Adds a step that ends at a day, with the mean discharge of each point (m³/d). */
    void add(double endDay, double[] meanRates) {
        if (steps + 1 == days.length) {
            days = Arrays.copyOf(days, 2 * days.length);
            rates = Arrays.copyOf(rates, (days.length - 1) * points);
        }
        System.arraycopy(meanRates, 0, rates, steps * points, points);
        steps++;
        days[steps] = endDay;
    }

    /** Number of steps. */
    public int steps() {
        return steps;
    }

    /** Number of bores and springs. */
    public int points() {
        return points;
    }

    /** Day a step begins; {@code step == steps()} gives the end of the last. */
    public double startOf(int step) {
        return days[step];
    }

    /** Mean discharge of a point in a step (m³/d). */
    public double rate(int step, int point) {
        return rates[step * points + point];
    }
}
