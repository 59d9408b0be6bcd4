package org.headfall.scenarios.sweep.statistics;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoublePredicate;
import java.util.stream.IntStream;

/**
 * How far a figure swings with one variable while all others vary as they do: its mean over the runs with the lowest tenth
 * of the variable and over those with the highest tenth. A bar of a tornado chart. Where values have no order, between the
 * value with the least mean and the one with the greatest.
 *
 * @param low mean figure where the variable is low
 * @param high mean figure where the variable is high
 * @param atLow greatest value of the variable that counts as low, or the value with the least mean
 * @param atHigh least value of the variable that counts as high, or the value with the greatest mean
 * @param error half of the width of the 95 per cent interval of {@code high - low} by sampling; NaN if samples are too few
 * @param probability of a bar as long by chance alone; NaN if samples are too few
 */
public record Swing(double low, double high, double atLow, double atHigh, double error, double probability) {

    /** The swing of what cannot be put in order or has no runs. */
    public static final Swing NONE = new Swing(Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN);

    private static final double TENTH = 0.1;

    /**
     * The swing.
     *
     * @param variable value of the variable in each run
     * @param figure figure of each run; runs without are left out
     * @param sample number of the independent sample of each run
     * @return the swing, {@link #NONE} if there are no runs
     */
    public static Swing of(double[] variable, double[] figure, int[] sample) {
        double[] used = IntStream.range(0, figure.length)
                .filter(i -> Double.isFinite(figure[i]))
                .mapToDouble(i -> variable[i])
                .sorted()
                .toArray();
        if (used.length == 0) {
            return NONE;
        }
        int tenth = Math.max(1, (int) Math.round(TENTH * used.length));
        double low = used[tenth - 1];
        double high = used[used.length - tenth];
        int[] lowest = places(variable, value -> value <= low);
        int[] highest = places(variable, value -> value >= high);
        MeanDifference difference = MeanDifference.of(figure, sample, lowest, highest);
        return new Swing(
                mean(figure, lowest),
                mean(figure, highest),
                low,
                high,
                difference.halfWidth(1),
                difference.probability());
    }

    private static int[] places(double[] variable, DoublePredicate wanted) {
        return IntStream.range(0, variable.length)
                .filter(i -> wanted.test(variable[i]))
                .toArray();
    }

    private static double mean(double[] figure, int[] places) {
        return Arrays.stream(places)
                .mapToDouble(i -> figure[i])
                .filter(Double::isFinite)
                .average()
                .orElse(Double.NaN);
    }

    /**
     * The swing between the values of a variable that have no order: mean figure of the runs of the value with the least
     * mean, and of the one with the greatest. The greatest of many differences is large by chance alone, so the interval is
     * that of all differences of two values together.
     *
     * @param variable number of the value in each run
     * @param figure figure of each run; runs without are left out
     * @param sample number of the independent sample of each run
     * @return the swing, {@link #NONE} if there are no runs
     */
    public static Swing betweenValues(double[] variable, double[] figure, int[] sample) {
        record Mean(double value, double mean) {}
        List<Mean> means = Arrays.stream(variable)
                .distinct()
                .sorted()
                .mapToObj(value -> new Mean(value, mean(figure, places(variable, other -> other == value))))
                .filter(of -> Double.isFinite(of.mean()))
                .sorted(Comparator.comparingDouble(Mean::mean))
                .toList();
        if (means.isEmpty()) {
            return NONE;
        }
        Mean least = means.get(0);
        Mean greatest = means.get(means.size() - 1);
        int pairs = Math.max(1, means.size() * (means.size() - 1) / 2);
        MeanDifference difference = MeanDifference.of(
                figure,
                sample,
                places(variable, other -> other == least.value()),
                places(variable, other -> other == greatest.value()));
        return new Swing(
                least.mean(),
                greatest.mean(),
                least.value(),
                greatest.value(),
                difference.halfWidth(pairs),
                Math.min(1, pairs * difference.probability()));
    }

    /** The same swing where every combination was run, so that there is no error of sampling. */
    public Swing withoutSampling() {
        return new Swing(low, high, atLow, atHigh, 0, low == high ? 1 : 0);
    }

    /** Length of the bar. */
    public double length() {
        return Math.abs(high - low);
    }

    /** Whether the bar is longer than the error of sampling; not if that is not known. */
    public boolean isToldApart() {
        return length() > error;
    }
}
