package org.headfall.solver.response;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.headfall.solver.wording.PlainNumber;

/**
 * Drawdown at every receptor by a constant unit discharge at every cause, over time. Between the computed times each
 * curve is a monotone cubic in the logarithm of time through the computed values and rates of change (Fritsch and
 * Carlson 1980, SIAM J. Numer. Anal. 17, 238-246), which follows the near-straight lines of confined flow closely. All
 * curves share their times, so the weights of the cubic are found once for all of them. Immutable.
 */
public final class ResponseTable {

    private static final double ROUNDING = 1e-9;

    private final int receptors;
    private final int[] everyReceptor;
    private final double[] logTimes;
    private final double[] times;
    private final double[] atOnce;
    private final double[][] values;
    private final double[][] slopes;
    private final double[][] integrals;

    /**
     * Table of computed curves. The curve of a cause at a receptor has the place {@code cause receptors + receptor}.
     *
     * @param receptors number of receptors
     * @param times times since the discharge began (d), positive, increasing, at least two
     * @param atOnce drawdown per discharge at time zero (d/m²): what the grid does not carry near bores
     * @param values drawdown per discharge at each time (d/m²)
     * @param rates rate of change of drawdown per discharge at each time (1/m²); held down where the cubic would not be
     *     monotone
     */
    public ResponseTable(int receptors, double[] times, double[] atOnce, double[][] values, double[][] rates) {
        this.receptors = receptors;
        everyReceptor = IntStream.range(0, receptors).toArray();
        this.times = times.clone();
        this.atOnce = atOnce;
        this.values = values;
        logTimes = Arrays.stream(times).map(Math::log).toArray();
        slopes = new double[times.length][atOnce.length];
        for (int curve = 0; curve < atOnce.length; curve++) {
            setSlopes(curve, rates);
        }
        integrals = integrals();
    }

    /** Slopes over the logarithm of time, held down to three times the chords beside them: enough for monotony. */
    private void setSlopes(int curve, double[][] rates) {
        int last = times.length - 1;
        for (int i = 0; i <= last; i++) {
            double before = chord(curve, Math.max(0, i - 1));
            double after = chord(curve, Math.min(last - 1, i));
            double steepest = before * after > 0 ? 3 * Math.min(Math.abs(before), Math.abs(after)) : 0;
            double slope = times[i] * rates[i][curve];
            slopes[i][curve] = slope * before > 0 ? Math.copySign(Math.min(Math.abs(slope), steepest), before) : 0;
        }
    }

    private double chord(int curve, int interval) {
        return (values[interval + 1][curve] - values[interval][curve]) / (logTimes[interval + 1] - logTimes[interval]);
    }

    /** Integral of every curve up to each of its times (d²/m²). */
    private double[][] integrals() {
        double[][] sums = new double[times.length][atOnce.length];
        for (int curve = 0; curve < atOnce.length; curve++) {
            sums[0][curve] = 0.5 * times[0] * (atOnce[curve] + values[0][curve]);
        }
        for (int i = 1; i < times.length; i++) {
            double[] weights = HermiteWeights.integral(times[i - 1], logTimes[i] - logTimes[i - 1], 1);
            for (int curve = 0; curve < atOnce.length; curve++) {
                sums[i][curve] = sums[i - 1][curve] + weighted(weights, i - 1, curve);
            }
        }
        return sums;
    }

    private double weighted(double[] weights, int interval, int curve) {
        return weights[0] * values[interval][curve]
                + weights[1] * values[interval + 1][curve]
                + weights[2] * slopes[interval][curve]
                + weights[3] * slopes[interval + 1][curve];
    }

    /** Times since the discharge began (d), a copy. */
    public double[] times() {
        return times.clone();
    }

    /** Drawdown per discharge at time zero (d/m²), of the curve at the place {@code cause receptors + receptor}; a copy. */
    public double[] atOnce() {
        return atOnce.clone();
    }

    /** Drawdown per discharge of every curve at one of the times (d/m²), a copy. */
    public double[] valuesAt(int time) {
        return values[time].clone();
    }

    /** Rate of change of every curve at one of the times (1/m²), as the cubics use it. */
    public double[] ratesAt(int time) {
        return Arrays.stream(slopes[time]).map(slope -> slope / times[time]).toArray();
    }

    /** Largest effect of a unit discharge of each cause at any receptor at the last time (d/m²): curves grow until then. */
    double[] largestEffects() {
        double[] last = all(lastTime());
        double[] effects = new double[causes()];
        for (int curve = 0; curve < last.length; curve++) {
            int cause = curve / receptors;
            effects[cause] = Math.max(effects[cause], Math.abs(last[curve]));
        }
        return effects;
    }

    int receptors() {
        return receptors;
    }

    int causes() {
        return atOnce.length / receptors;
    }

    double lastTime() {
        return times[times.length - 1];
    }

    /** Drawdown per discharge at a receptor by one cause (d/m²). */
    double at(int receptor, int cause, double time) {
        int curve = cause * receptors + receptor;
        if (time <= 0) {
            return 0;
        }
        if (time <= times[0]) {
            return atOnce[curve] + (values[0][curve] - atOnce[curve]) * time / times[0];
        }
        int interval = interval(time);
        return weighted(valueWeights(interval, time), interval, curve);
    }

    /** Drawdown per discharge of every curve at one time, positive (d/m²). */
    double[] all(double time) {
        double[] curves = new double[atOnce.length];
        boolean early = time <= times[0];
        int interval = early ? 0 : interval(time);
        double[] weights = early ? new double[0] : valueWeights(interval, time);
        for (int curve = 0; curve < curves.length; curve++) {
            curves[curve] = early
                    ? atOnce[curve] + (values[0][curve] - atOnce[curve]) * time / times[0]
                    : weighted(weights, interval, curve);
        }
        return curves;
    }

    /**
     * Adds the drawdown at all receptors by discharges that have lasted for a time.
     *
     * @param time how long they have lasted (d), positive
     * @param discharges discharge of each cause (m³/d)
     * @param drawdown drawdown of each receptor, added to (m)
     */
    public void addSteps(double time, double[] discharges, double[] drawdown) {
        addSteps(time, discharges, everyReceptor, drawdown);
    }

    /**
     * Adds the drawdown at some receptors by discharges that have lasted for a time.
     *
     * @param time how long they have lasted (d), positive
     * @param discharges discharge of each cause (m³/d)
     * @param at the receptors
     * @param drawdown drawdown of each of them, added to (m)
     */
    void addSteps(double time, double[] discharges, int[] at, double[] drawdown) {
        if (time <= times[0]) {
            double share = time / times[0];
            addWeighted(discharges, at, drawdown, atOnce, 1 - share, values[0], share);
            return;
        }
        int interval = interval(time);
        double[] weights = valueWeights(interval, time);
        addWeighted(discharges, at, drawdown, values[interval], weights[0], values[interval + 1], weights[1]);
        addWeighted(discharges, at, drawdown, slopes[interval], weights[2], slopes[interval + 1], weights[3]);
    }

    /**
     * Adds the drawdown at some receptors by discharges that have grown evenly for a time.
     *
     * @param time how long they have grown (d), positive
     * @param growth growth of the discharge of each cause (m³/d²)
     * @param at the receptors
     * @param drawdown drawdown of each of them, added to (m)
     */
    void addRamps(double time, double[] growth, int[] at, double[] drawdown) {
        if (time <= times[0]) {
            double half = 0.5 * time * time / times[0];
            addWeighted(growth, at, drawdown, atOnce, time - half, values[0], half);
            return;
        }
        int interval = interval(time);
        double width = logTimes[interval + 1] - logTimes[interval];
        double[] weights = HermiteWeights.integral(times[interval], width, fraction(interval, time));
        addWeighted(growth, at, drawdown, values[interval], weights[0], values[interval + 1], weights[1]);
        addWeighted(growth, at, drawdown, slopes[interval], weights[2], slopes[interval + 1], weights[3]);
        addWeighted(growth, at, drawdown, integrals[interval], 1, integrals[interval], 0);
    }

    private void addWeighted(
            double[] amounts,
            int[] at,
            double[] drawdown,
            double[] one,
            double oneWeight,
            double[] other,
            double otherWeight) {
        for (int cause = 0; cause < amounts.length; cause++) {
            if (amounts[cause] != 0) {
                double a = amounts[cause] * oneWeight;
                double b = amounts[cause] * otherWeight;
                int from = cause * receptors;
                for (int i = 0; i < at.length; i++) {
                    drawdown[i] += a * one[from + at[i]] + b * other[from + at[i]];
                }
            }
        }
    }

    private double[] valueWeights(int interval, double time) {
        return HermiteWeights.value(logTimes[interval + 1] - logTimes[interval], fraction(interval, time));
    }

    private double fraction(int interval, double time) {
        return (Math.log(time) - logTimes[interval]) / (logTimes[interval + 1] - logTimes[interval]);
    }

    private int interval(double time) {
        if (time > lastTime() * (1 + ROUNDING)) {
            throw new IllegalArgumentException("responses were computed up to " + PlainNumber.of(lastTime())
                    + " d, asked for " + PlainNumber.of(time) + " d");
        }
        int found = Arrays.binarySearch(times, time);
        int interval = found >= 0 ? found : -found - 2;
        return Math.min(interval, times.length - 2);
    }
}
