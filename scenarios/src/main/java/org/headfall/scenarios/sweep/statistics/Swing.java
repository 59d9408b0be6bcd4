package org.headfall.scenarios.sweep.statistics;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * How far a figure swings with one variable while all others vary as they do: its mean over the runs with the lowest tenth
 * of the variable and over those with the highest tenth. A bar of a tornado chart. Where values have no order, between the
 * value with the least mean and the one with the greatest.
 *
 * @param low mean figure where the variable is low
 * @param high mean figure where the variable is high
 */
public record Swing(double low, double high) {

    private static final double TENTH = 0.1;

    /**
     * The swing.
     *
     * @param variable value of the variable in each run
     * @param figure figure of each run; runs without are left out
     * @return the swing, NaN if there are no runs
     */
    public static Swing of(double[] variable, double[] figure) {
        double[] used = IntStream.range(0, figure.length)
                .filter(i -> Double.isFinite(figure[i]))
                .mapToDouble(i -> variable[i])
                .sorted()
                .toArray();
        if (used.length == 0) {
            return new Swing(Double.NaN, Double.NaN);
        }
        int tenth = Math.max(1, (int) Math.round(TENTH * used.length));
        return new Swing(
                mean(variable, figure, Double.NEGATIVE_INFINITY, used[tenth - 1]),
                mean(variable, figure, used[used.length - tenth], Double.POSITIVE_INFINITY));
    }

    private static double mean(double[] variable, double[] figure, double from, double to) {
        return IntStream.range(0, figure.length)
                .filter(i -> variable[i] >= from && variable[i] <= to && Double.isFinite(figure[i]))
                .mapToDouble(i -> figure[i])
                .average()
                .orElse(Double.NaN);
    }

    /**
     * The swing between the values of a variable that have no order: mean figure of the runs of the value with the least
     * mean, and of the one with the greatest.
     *
     * @param variable number of the value in each run
     * @param figure figure of each run; runs without are left out
     * @return the swing, NaN if there are no runs
     */
    public static Swing betweenValues(double[] variable, double[] figure) {
        double[] means = Arrays.stream(variable)
                .distinct()
                .map(value -> mean(variable, figure, value, value))
                .filter(Double::isFinite)
                .toArray();
        return new Swing(
                Arrays.stream(means).min().orElse(Double.NaN),
                Arrays.stream(means).max().orElse(Double.NaN));
    }

    /** Length of the bar. */
    public double length() {
        return Math.abs(high - low);
    }
}
