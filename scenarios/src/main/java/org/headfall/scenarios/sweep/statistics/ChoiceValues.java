package org.headfall.scenarios.sweep.statistics;

import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;

/**
 * What choices are worth that all got the same samples: the mean of a figure over the samples, or a quantile of it. Only
 * samples of which every choice has a figure count, so that no choice is better for having met easier samples. Differences
 * are taken sample by sample, so what all choices have in common leaves no error in them.
 *
 * <p>Errors of means are those of Student (1908), Biometrika 6, 1-25. Those of quantiles are found by drawing {@link #DRAWS}
 * times as many of the samples with repetition (Efron 1979, Annals of Statistics 7, 1-26), the same ones for all choices.
 */
public final class ChoiceValues {

    /** A standard deviation of so many draws errs by one part in the root of twice their number: 4 per cent. */
    private static final int DRAWS = 400;

    private static final long SEED = 19_790_101;

    /** The fewest samples expected beyond a quantile for an error of it (common practice, no source). */
    private static final double FEWEST_BEYOND = 5;

    private static final double ROUNDING = 1e-9;

    private final double[][] figures;
    private final int samples;
    private final OptionalDouble share;
    private final double[] values;
    private final double[][] drawn;

    /**
     * The values of choices.
     *
     * @param figures figure by choice and sample, NaN where there is none; choices without any figure have no value
     * @param share the share of the samples that lie below the quantile; the mean is taken if it is empty
     */
    public ChoiceValues(double[][] figures, OptionalDouble share) {
        this.share = share;
        double[][] known = Arrays.stream(figures).filter(ChoiceValues::hasAny).toArray(double[][]::new);
        int[] common = IntStream.range(0, figures.length == 0 ? 0 : figures[0].length)
                .filter(k -> Arrays.stream(known).allMatch(of -> Double.isFinite(of[k])))
                .toArray();
        samples = common.length;
        this.figures = Arrays.stream(figures)
                .map(of -> hasAny(of) ? picked(of, common) : new double[0])
                .toArray(double[][]::new);
        values = Arrays.stream(this.figures).mapToDouble(this::statistic).toArray();
        drawn = share.isPresent() ? draws() : new double[0][];
    }

    private static boolean hasAny(double[] figures) {
        return Arrays.stream(figures).anyMatch(Double::isFinite);
    }

    private static double[] picked(double[] from, int[] places) {
        return Arrays.stream(places).mapToDouble(k -> from[k]).toArray();
    }

    private double statistic(double[] of) {
        return share.isPresent()
                ? Ranks.quantile(of, share.getAsDouble())
                : Arrays.stream(of).average().orElse(Double.NaN);
    }

    private double[][] draws() {
        double[][] all = new double[figures.length][DRAWS];
        SplittableRandom random = new SplittableRandom(SEED);
        for (int draw = 0; draw < DRAWS; draw++) {
            int[] places = IntStream.range(0, samples)
                    .map(k -> random.nextInt(samples))
                    .toArray();
            for (int choice = 0; choice < figures.length; choice++) {
                all[choice][draw] =
                        figures[choice].length == 0 ? Double.NaN : statistic(picked(figures[choice], places));
            }
        }
        return all;
    }

    /** How many samples count. */
    public int samples() {
        return samples;
    }

    /** The value of a choice, NaN if there is none. */
    public double value(int choice) {
        return values[choice];
    }

    /** Half of the width of the 95 per cent interval of a value; NaN of fewer than two samples, or five expected beyond a quantile. */
    public double error(int choice) {
        double[] one = share.isPresent() ? drawn[choice] : figures[choice];
        return isExtreme() ? Double.NaN : halfWidth(one, 1);
    }

    /**
     * Whether one choice is told apart from another. All pairs of choices that have values hold together with a probability of
     * 95 per cent (Dunn 1961, J. Am. Stat. Assoc. 56, 52-64), so that either may have been picked by its value: comparing
     * the best alone with each other choice is no comparison with one that was fixed before.
     *
     * @param one a choice
     * @param other another
     * @return whether the difference is more than its error; not if the error is not known
     */
    public boolean areToldApart(int one, int other) {
        double[] first = share.isPresent() ? drawn[one] : figures[one];
        double[] second = share.isPresent() ? drawn[other] : figures[other];
        double[] differences = IntStream.range(0, Math.min(first.length, second.length))
                .mapToDouble(k -> first[k] - second[k])
                .toArray();
        int choices = (int) Arrays.stream(values).filter(Double::isFinite).count();
        int pairs = Math.max(1, choices * (choices - 1) / 2);
        return Math.abs(values[one] - values[other]) > halfWidth(differences, pairs);
    }

    /** Whether so few samples lie beyond the quantile that drawing them again says nothing of how far they may lie. */
    private boolean isExtreme() {
        return share.isPresent()
                && Math.min(share.getAsDouble(), 1 - share.getAsDouble()) * samples < FEWEST_BEYOND - ROUNDING;
    }

    private double halfWidth(double[] terms, int comparisons) {
        if (samples < 2 || terms.length == 0) {
            return Double.NaN;
        }
        SummaryStatistics statistics = new SummaryStatistics();
        Arrays.stream(terms).forEach(statistics::addValue);
        double standardError = statistics.getStandardDeviation() / (share.isPresent() ? 1 : Math.sqrt(samples));
        return standardError * MeanDifference.deviations(samples - 1, comparisons);
    }
}
