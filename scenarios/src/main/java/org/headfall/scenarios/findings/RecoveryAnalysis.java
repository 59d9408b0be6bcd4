package org.headfall.scenarios.findings;

import java.util.OptionalDouble;
import org.headfall.scenarios.recording.Station;

/**
 * Finds the largest drawdown and the recovery at a station in a series that begins when taking stops. Between records the
 * largest drawdown is that of the parabola through the three records around it, and recovery runs straight.
 */
public final class RecoveryAnalysis {

    /** Part of the largest drawdown that is left when a station counts as recovered. */
    private static final double LEFT = 0.1;

    private final double[] days;

    /**
     * Analysis of series on the same days.
     *
     * @param days days since the start, increasing, from the day on which taking stops; at least two
     */
    public RecoveryAnalysis(double[] days) {
        this.days = days.clone();
    }

    /**
     * Recovery of a station.
     *
     * @param station the station
     * @param taking whose taking stops, in words
     * @param drawdown drawdown by that taking on each of the days (m)
     * @param error numerical error of these (m)
     * @return what becomes of it
     */
    public Recovery of(Station station, String taking, double[] drawdown, double error) {
        int worst = 0;
        for (int k = 1; k < days.length; k++) {
            worst = drawdown[k] > drawdown[worst] ? k : worst;
        }
        boolean inside = worst > 0 && worst < days.length - 1;
        double day = inside ? vertex(worst, drawdown) : days[worst];
        double largest = inside ? parabola(worst, drawdown, day) : drawdown[worst];
        return new Recovery(
                station.name(),
                station.kind(),
                taking,
                days[0],
                drawdown[0],
                largest,
                day,
                worst < days.length - 1,
                LEFT * largest > error ? recovered(worst, drawdown, LEFT * largest) : OptionalDouble.empty(),
                days[days.length - 1],
                error);
    }

    /** Looked for from the end, for what rises again has not recovered. */
    private OptionalDouble recovered(int worst, double[] drawdown, double left) {
        int last = days.length - 1;
        if (drawdown[last] > left) {
            return OptionalDouble.empty();
        }
        int above = last - 1;
        while (above > worst && drawdown[above] <= left) {
            above--;
        }
        double part = (drawdown[above] - left) / (drawdown[above] - drawdown[above + 1]);
        return OptionalDouble.of(days[above] + part * (days[above + 1] - days[above]));
    }

    private double vertex(int k, double[] drawdown) {
        double before = slope(k - 1, drawdown);
        double after = slope(k, drawdown);
        double middle = 0.5 * (days[k - 1] + days[k]);
        double next = 0.5 * (days[k] + days[k + 1]);
        return before > after ? middle + (next - middle) * before / (before - after) : days[k];
    }

    private double parabola(int k, double[] drawdown, double day) {
        double bend = (slope(k, drawdown) - slope(k - 1, drawdown)) / (days[k + 1] - days[k - 1]);
        return drawdown[k] + (day - days[k]) * slope(k - 1, drawdown) + (day - days[k]) * (day - days[k - 1]) * bend;
    }

    private double slope(int k, double[] drawdown) {
        return (drawdown[k + 1] - drawdown[k]) / (days[k + 1] - days[k]);
    }
}
