package org.headfall.solver.response;

import java.util.Arrays;

/**
 * Drawdown at a receptor by a constant unit discharge, over time. Between the computed times the curve is a monotone
 * cubic in the logarithm of time through the computed values and rates of change (Fritsch and Carlson 1980, SIAM J.
 * Numer. Anal. 17, 238-246), which follows the near-straight lines of confined flow closely.
 */
public final class ResponseCurve {

    private final double[] logTimes;
    private final double[] values;
    private final double[] slopes;
    private final double atOnce;

    /**
     * Curve through computed values.
     *
     * @param times times since the discharge began (d), positive, increasing, at least two
     * @param values drawdown per discharge at each time (d/m²)
     * @param rates rate of change of drawdown per discharge at each time (1/m²)
     * @param atOnce drawdown per discharge at time zero (d/m²): the way from cell to wall for a bore on itself
     */
    public ResponseCurve(double[] times, double[] values, double[] rates, double atOnce) {
        if (times.length < 2 || times.length != values.length || times.length != rates.length) {
            throw new IllegalArgumentException("need at least two times and as many values and rates, found "
                    + times.length + ", " + values.length + " and " + rates.length);
        }
        logTimes = new double[times.length];
        for (int i = 0; i < times.length; i++) {
            logTimes[i] = Math.log(times[i]);
        }
        this.values = values.clone();
        this.atOnce = atOnce;
        slopes = slopes(times, rates);
    }

    /** Slopes over the logarithm of time, held down to three times the chords beside them: enough for monotony. */
    private double[] slopes(double[] times, double[] rates) {
        int n = values.length;
        double[] slopes = new double[n];
        for (int i = 0; i < n; i++) {
            double before = i > 0 ? chord(i - 1) : chord(0);
            double after = i < n - 1 ? chord(i) : before;
            double steepest = before * after > 0 ? 3 * Math.min(Math.abs(before), Math.abs(after)) : 0;
            double slope = times[i] * rates[i];
            slopes[i] = slope * before > 0 ? Math.copySign(Math.min(Math.abs(slope), steepest), before) : 0;
        }
        return slopes;
    }

    private double chord(int i) {
        return (values[i + 1] - values[i]) / (logTimes[i + 1] - logTimes[i]);
    }

    /**
     * Drawdown per discharge.
     *
     * @param time time since the discharge began (d); nothing before
     * @return drawdown (d/m²)
     * @throws IllegalArgumentException if the time lies beyond the last computed one
     */
    public double at(double time) {
        if (time <= 0) {
            return 0;
        }
        double logTime = Math.log(time);
        int last = logTimes.length - 1;
        if (logTime <= logTimes[0]) {
            return atOnce + (values[0] - atOnce) * time / Math.exp(logTimes[0]);
        }
        if (logTime > logTimes[last] + 1e-9) {
            throw new IllegalArgumentException(
                    "responses were computed up to " + Math.exp(logTimes[last]) + " d, asked for " + time + " d");
        }
        int i = interval(logTime);
        double width = logTimes[i + 1] - logTimes[i];
        double u = (logTime - logTimes[i]) / width;
        double v = 1 - u;
        return v * v * (1 + 2 * u) * values[i]
                + u * u * (1 + 2 * v) * values[i + 1]
                + u * v * width * (v * slopes[i] - u * slopes[i + 1]);
    }

    private int interval(double logTime) {
        int found = Arrays.binarySearch(logTimes, logTime);
        int i = found >= 0 ? found : -found - 2;
        return Math.min(i, logTimes.length - 2);
    }
}
