package org.headfall.solver.flow;

import java.util.Arrays;
import java.util.BitSet;

/**
 * What superposition of responses needs of a run: for every time step and every bore and spring, bores first, the mean
 * discharge over the step, and discharge and head at the wall at its end.
 */
public final class RateHistory {

    private final int points;
    private double[] days;
    private double[] rates;
    private double[] endRates;
    private double[] endHeads;
    private final BitSet startsAnew = new BitSet();
    private int steps;

    /**
     * Empty history.
     *
     * @param points number of bores and springs
     * @param startDay day the first step begins
     */
    public RateHistory(int points, double startDay) {
        this.points = points;
        days = new double[1024];
        rates = new double[1023 * points];
        endRates = new double[1023 * points];
        endHeads = new double[1023 * points];
        days[0] = startDay;
    }

    /**
     * Adds a step.
     *
     * @param endDay day it ends
     * @param anew whether discharges jump where it begins
     * @param meanRates mean discharge of each point (m³/d)
     * @param ratesAtEnd discharge of each point at the end (m³/d)
     * @param headsAtEnd head at the wall of each point at the end (m above datum)
     */
    public void add(double endDay, boolean anew, double[] meanRates, double[] ratesAtEnd, double[] headsAtEnd) {
        if (steps + 1 == days.length) {
            days = Arrays.copyOf(days, 2 * days.length);
            rates = Arrays.copyOf(rates, (days.length - 1) * points);
            endRates = Arrays.copyOf(endRates, (days.length - 1) * points);
            endHeads = Arrays.copyOf(endHeads, (days.length - 1) * points);
        }
        System.arraycopy(meanRates, 0, rates, steps * points, points);
        System.arraycopy(ratesAtEnd, 0, endRates, steps * points, points);
        System.arraycopy(headsAtEnd, 0, endHeads, steps * points, points);
        startsAnew.set(steps, anew);
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

    /** Whether discharges jump where a step begins; if not, they go on from the end of the step before. */
    public boolean startsAnew(int step) {
        return startsAnew.get(step);
    }

    /** Mean discharge of a point in a step (m³/d). */
    public double rate(int step, int point) {
        return rates[step * points + point];
    }

    /** Discharge of a point at the end of a step, before any jump there (m³/d). */
    public double rateAtEnd(int step, int point) {
        return endRates[step * points + point];
    }

    /**
     * Discharge of a point at the end of a step if it runs straight from the end of one step to the end of the next, but
     * stays at its mean in the short step after a jump (m³/d): what superposition takes it for.
     */
    public double straightenedRateAtEnd(int step, int point) {
        return startsAnew(step) ? rate(step, point) : rateAtEnd(step, point);
    }

    /** Head at the wall of a point at the end of a step (m above datum). */
    public double headAtEnd(int step, int point) {
        return endHeads[step * points + point];
    }
}
