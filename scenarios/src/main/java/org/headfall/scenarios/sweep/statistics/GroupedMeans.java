package org.headfall.scenarios.sweep.statistics;

import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.stat.ranking.NaNStrategy;
import org.apache.commons.math3.stat.ranking.NaturalRanking;
import org.apache.commons.math3.stat.ranking.TiesStrategy;

/**
 * Whether a figure differs anywhere along a variable: its means over groups of equally many samples by the variable, equal
 * values in one group. Unlike a rank correlation or the two ends it sees what rises and falls again.
 *
 * @param least mean figure of the group with the least
 * @param greatest mean figure of the group with the greatest
 * @param error half of the width of the 95 per cent interval of {@code greatest - least} by sampling, that of all pairs of
 *     groups together; NaN if samples are too few
 * @param probability of groups that differ as much by chance alone, by the test of Kruskal and Wallis (1952), J. Am. Stat.
 *     Assoc. 47, 583-621; NaN if samples are too few
 */
public record GroupedMeans(double least, double greatest, double error, double probability) {

    /** Of what has no runs, or too few. */
    public static final GroupedMeans NONE = new GroupedMeans(Double.NaN, Double.NaN, Double.NaN, Double.NaN);

    private static final int MOST_GROUPS = 6;

    /** The fewest samples in a group for which chi squared stands for the exact distribution (common practice, no source). */
    private static final int FEWEST_IN_A_GROUP = 5;

    private static final int FEWEST_GROUPS = 3;

    /**
     * The means. Runs of one sample count once, with their mean.
     *
     * @param variable value of the variable in each run
     * @param figure figure of each run; runs without are left out
     * @param sample number of the independent sample of each run
     * @return {@link #NONE} for fewer than 15 samples, fewer than three groups, or where runs of a sample have different
     *     values of the variable
     */
    public static GroupedMeans of(double[] variable, double[] figure, int[] sample) {
        Map<Integer, Sample> all = new LinkedHashMap<>();
        for (int run = 0; run < figure.length; run++) {
            if (Double.isFinite(figure[run])) {
                all.merge(sample[run], new Sample(variable[run], figure[run], 1), Sample::and);
            }
        }
        List<Sample> sorted = all.values().stream()
                .sorted(Comparator.comparingDouble(Sample::variable))
                .toList();
        int wanted = Math.min(MOST_GROUPS, sorted.size() / FEWEST_IN_A_GROUP);
        if (wanted < FEWEST_GROUPS || sorted.stream().anyMatch(one -> Double.isNaN(one.variable()))) {
            return NONE;
        }
        int[] group = groups(sorted, wanted);
        double[] means = sorted.stream().mapToDouble(Sample::mean).toArray();
        int[][] places = Arrays.stream(group)
                .distinct()
                .mapToObj(number -> IntStream.range(0, group.length)
                        .filter(i -> group[i] == number)
                        .toArray())
                .toArray(int[][]::new);
        return places.length < FEWEST_GROUPS ? NONE : of(means, places);
    }

    private static GroupedMeans of(double[] figure, int[][] places) {
        int[][] byMean = places.clone();
        Arrays.sort(byMean, Comparator.comparingDouble(group -> mean(figure, group)));
        int[] least = byMean[0];
        int[] greatest = byMean[byMean.length - 1];
        int[] each = IntStream.range(0, figure.length).toArray();
        return new GroupedMeans(
                mean(figure, least),
                mean(figure, greatest),
                MeanDifference.of(figure, each, least, greatest).halfWidth(places.length * (places.length - 1) / 2),
                probability(figure, places));
    }

    /** The number of the group of each, equal values in one. */
    private static int[] groups(List<Sample> sorted, int wanted) {
        int[] group = new int[sorted.size()];
        for (int i = 0; i < group.length; i++) {
            boolean same =
                    i > 0 && sorted.get(i).variable() == sorted.get(i - 1).variable();
            group[i] = same ? group[i - 1] : i * wanted / group.length;
        }
        return group;
    }

    /**
     * Kruskal and Wallis (1952): {@code H = 12 / (N (N + 1)) sum(R^2 / n) - 3 (N + 1)} with rank sums R of groups of n, over
     * {@code 1 - sum(t^3 - t) / (N^3 - N)} for ties of t, is chi squared with one degree of freedom less than groups.
     */
    private static double probability(double[] figure, int[][] places) {
        double[] ranks = new NaturalRanking(NaNStrategy.FAILED, TiesStrategy.AVERAGE).rank(figure);
        double count = ranks.length;
        double sum = 0;
        for (int[] group : places) {
            double rankSum = Arrays.stream(group).mapToDouble(i -> ranks[i]).sum();
            sum += rankSum * rankSum / group.length;
        }
        double[] values = Arrays.stream(figure).distinct().toArray();
        double ties = 0;
        for (double value : values) {
            double alike = Arrays.stream(figure).filter(other -> other == value).count();
            ties += alike * alike * alike - alike;
        }
        double correction = 1 - ties / (count * count * count - count);
        double h = (12 / (count * (count + 1)) * sum - 3 * (count + 1)) / correction;
        return values.length < 2
                ? 1
                : 1 - new ChiSquaredDistribution(null, places.length - 1.0).cumulativeProbability(h);
    }

    private static double mean(double[] figure, int[] places) {
        return Arrays.stream(places).mapToDouble(i -> figure[i]).average().orElse(Double.NaN);
    }

    /** The same where every combination was run, so that nothing is left to sampling. */
    public GroupedMeans withoutSampling() {
        return new GroupedMeans(least, greatest, 0, greatest > least ? 0 : 1);
    }

    /** Difference of the greatest and the least mean. */
    public double length() {
        return greatest - least;
    }

    /** The runs of a sample; no variable where they differ in it. */
    private record Sample(double variable, double sum, int count) {

        Sample and(Sample other) {
            return new Sample(variable == other.variable ? variable : Double.NaN, sum + other.sum, count + other.count);
        }

        double mean() {
            return sum / count;
        }
    }
}
