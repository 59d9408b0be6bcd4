package org.headfall.scenarios.sweep.statistics;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * Difference of the mean figures of two groups of runs, with its error by sampling.
 *
 * <p>Runs of one sample are not independent; the error is that of samples, by the sum of squares of what each sample adds to
 * the difference (Liang and Zeger 1986, Biometrika 73, 13-22), each group's part raised by
 * {@code n / (n - 1)} for its n samples. Where no sample has two runs that is the standard error of Welch (1938), Biometrika
 * 29, 350-362; where each has one run in both groups, that of paired differences.
 *
 * @param value mean of the second group less that of the first
 * @param standardError its standard error; NaN if a group has fewer than two samples
 * @param freedom degrees of freedom: samples of the smaller group less one, the fewest there may be
 */
public record MeanDifference(double value, double standardError, int freedom) {

    private static final double OUTSIDE = 0.05;

    /**
     * The difference of two groups.
     *
     * @param figure figure of each run
     * @param sample number of the sample of each run
     * @param first places of the runs of one group; those without a figure are left out
     * @param second places of the runs of the other
     * @return the difference, NaN if a group has no figure
     */
    public static MeanDifference of(double[] figure, int[] sample, int[] first, int[] second) {
        Map<Integer, Double> parts = new HashMap<>();
        Group less = Group.of(figure, sample, first);
        Group more = Group.of(figure, sample, second);
        less.add(-1, parts);
        more.add(1, parts);
        int freedom = Math.min(less.samples(), more.samples()) - 1;
        double squares =
                parts.values().stream().mapToDouble(part -> part * part).sum();
        return new MeanDifference(more.mean() - less.mean(), freedom < 1 ? Double.NaN : Math.sqrt(squares), freedom);
    }

    /**
     * Half of the width of the 95 per cent interval by the distribution of Student (1908).
     *
     * @param comparisons how many differences there are of which this may have been picked; the interval is widened so that
     *     all of them hold together (Dunn 1961, J. Am. Stat. Assoc. 56, 52-64)
     * @return NaN if there is no error
     */
    public double halfWidth(int comparisons) {
        return Double.isNaN(standardError) ? Double.NaN : standardError * deviations(freedom, comparisons);
    }

    /**
     * Half of the width of a 95 per cent interval in standard errors, widened for comparisons as in {@link #halfWidth}.
     *
     * @param freedom degrees of freedom
     * @param comparisons how many intervals hold together
     */
    static double deviations(int freedom, int comparisons) {
        return new TDistribution(null, freedom).inverseCumulativeProbability(1 - OUTSIDE / 2 / comparisons);
    }

    /** The probability of a difference as large by chance alone, by the distribution of Student; NaN if there is no error. */
    public double probability() {
        return standardError > 0
                ? 2 * new TDistribution(null, freedom).cumulativeProbability(-Math.abs(value) / standardError)
                : Double.NaN;
    }

    /** Runs of a group that have figures. */
    @SuppressWarnings("ArrayRecordComponent") // lives no longer than the difference it is made for
    private record Group(double[] figures, int[] ofSample, double mean, int samples) {

        static Group of(double[] figure, int[] sample, int[] places) {
            int[] used = Arrays.stream(places)
                    .filter(place -> Double.isFinite(figure[place]))
                    .toArray();
            double[] figures =
                    Arrays.stream(used).mapToDouble(place -> figure[place]).toArray();
            int[] ofSample = Arrays.stream(used).map(place -> sample[place]).toArray();
            return new Group(figures, ofSample, Arrays.stream(figures).average().orElse(Double.NaN), (int)
                    Arrays.stream(ofSample).distinct().count());
        }

        /** Adds what each sample adds to the mean. */
        void add(double sign, Map<Integer, Double> parts) {
            double weight = sign / figures.length * Math.sqrt(samples / Math.max(1, samples - 1.0));
            for (int i = 0; i < figures.length; i++) {
                parts.merge(ofSample[i], weight * (figures[i] - mean), Double::sum);
            }
        }
    }
}
