package org.headfall.solver.response;

import java.util.Arrays;

/**
 * Drawdown at a receptor by a constant unit discharge, over time. Between the computed times the curve is a monotone
 * cubic in the logarithm of time (Fritsch and Carlson 1980, SIAM J. Numer. Anal. 17, 238-246, with the weighted
 * harmonic slopes of Fritsch and Butland 1984), which follows the near-straight lines of confined flow closely.
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
     * @param atOnce drawdown per discharge at time zero (d/m²): the way from cell to wall for a bore on itself
     */
    public ResponseCurve(double[] times, double[] values, double atOnce) {
        if (times.length < 2 || times.length != values.length) {
            throw new IllegalArgumentException(
                    "need at least two times and as many values, found " + times.length + " and " + values.length);
        }
        logTimes = new double[times.length];
        for (int i = 0; i < times.length; i++) {
            logTimes[i] = Math.log(times[i]);
        }
        this.values = values.clone();
        this.atOnce = atOnce;
        slopes = slopes();
    }

    private double[] slopes() {
        int n = values.length;
        double[] slopes = new double[n];
        slopes[0] = chord(0);
        slopes[n - 1] = chord(n - 2);
        for (int i = 1; i < n - 1; i++) {
            double before = chord(i - 1);
            double after = chord(i);
            if (before * after > 0) {
                double widthBefore = logTimes[i] - logTimes[i - 1];
                double widthAfter = logTimes[i + 1] - logTimes[i];
                double weightBefore = 2 * widthAfter + widthBefore;
                double weightAfter = widthAfter + 2 * widthBefore;
                slopes[i] = (weightBefore + weightAfter) / (weightBefore / before + weightAfter / after);
            }
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
