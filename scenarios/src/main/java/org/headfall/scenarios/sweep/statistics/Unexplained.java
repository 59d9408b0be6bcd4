package org.headfall.scenarios.sweep.statistics;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.ranking.NaNStrategy;
import org.apache.commons.math3.stat.ranking.NaturalRanking;
import org.apache.commons.math3.stat.ranking.TiesStrategy;

/** How much of the variation of a figure is left when independent numbers and choices are taken out one by one. */
public final class Unexplained {

    private Unexplained() {}

    /**
     * The share of the variance of the ranks of a figure that none of some variables explains by itself: one less the
     * squared rank correlations with numbers, less the shares between the values of choices (epsilon squared, Kelley 1935,
     * Proc. Natl. Acad. Sci. 21, 554-559). What numbers do together, or rising and falling again, counts as left.
     *
     * @param figure figure of each run; runs without are left out
     * @param numbers each number in each run, independent of one another
     * @param choices number of the value of each choice in each run
     * @return from 0 to 1; NaN of figures that do not vary
     */
    public static double share(double[] figure, List<double[]> numbers, List<double[]> choices) {
        int[] used = IntStream.range(0, figure.length)
                .filter(i -> Double.isFinite(figure[i]))
                .toArray();
        if (used.length == 0) {
            return Double.NaN;
        }
        double[] ranks = new NaturalRanking(NaNStrategy.FAILED, TiesStrategy.AVERAGE)
                .rank(Arrays.stream(used).mapToDouble(i -> figure[i]).toArray());
        double left = 1;
        for (double[] number : numbers) {
            double correlation = Ranks.correlation(number, figure);
            left -= Double.isNaN(correlation) ? 0 : correlation * correlation;
        }
        for (double[] choice : choices) {
            left -= between(Arrays.stream(used).mapToDouble(i -> choice[i]).toArray(), ranks);
        }
        return Arrays.stream(ranks).distinct().count() < 2 ? Double.NaN : Math.min(1, Math.max(0, left));
    }

    private static double between(double[] choice, double[] ranks) {
        double mean = Arrays.stream(ranks).average().orElse(Double.NaN);
        double all =
                Arrays.stream(ranks).map(rank -> (rank - mean) * (rank - mean)).sum();
        double[] values = Arrays.stream(choice).distinct().toArray();
        double within = 0;
        for (double value : values) {
            double[] group = IntStream.range(0, choice.length)
                    .filter(i -> choice[i] == value)
                    .mapToDouble(i -> ranks[i])
                    .toArray();
            double middle = Arrays.stream(group).average().orElse(Double.NaN);
            within += Arrays.stream(group)
                    .map(rank -> (rank - middle) * (rank - middle))
                    .sum();
        }
        int free = ranks.length - values.length;
        return free == 0 || all == 0 ? 0 : Math.max(0, 1 - within / free * (ranks.length - 1) / all);
    }
}
