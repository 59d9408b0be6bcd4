package org.headfall.scenarios.sweep.statistics;

import java.util.Arrays;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;

/**
 * Which part of the variance of a figure each variable makes.
 *
 * <p>From samples as Saltelli and others (2010), Computer Physics Communications 181, 259-270, take them: figures of a
 * first set A, a second set B, and for each variable i of A with the values of i from B. First index: table 2 (b) there,
 * {@code mean(fB (fABi - fA)) / V}, the part that falls away on average if the variable is known. Total index: table 2 (f),
 * after Jansen (1999), {@code mean((fA - fABi)^2) / 2V}, the part that is left on average if all others are known. Standard
 * errors are those of these means, the variance taken as known and samples as independent.
 *
 * @param first first index of each variable
 * @param total total index of each variable
 * @param firstError standard error of each first index by sampling
 * @param totalError standard error of each total index by sampling
 * @param variance variance of the figure over both base sets, in its unit squared; NaN where the figure does not vary
 * @param samples samples of a set that could be used
 */
@SuppressWarnings("ArrayRecordComponent") // one number a variable, never compared
public record SobolIndices(
        double[] first, double[] total, double[] firstError, double[] totalError, double variance, int samples) {

    /**
     * The indices.
     *
     * @param figures figure of each run: those of A, of B, then of each mixed set, all of the same length; a sample of
     *     which one run has no figure is left out as a whole
     * @param variables how many variables
     * @return the indices, NaN where the figure does not vary
     * @throws IllegalArgumentException if the figures are not {@code variables + 2} sets
     */
    public static SobolIndices of(double[] figures, int variables) {
        int sets = variables + 2;
        int samples = figures.length / sets;
        if (samples * sets != figures.length) {
            throw new IllegalArgumentException(figures.length + " figures are not " + sets + " sets");
        }
        boolean[] usable = usable(figures, sets, samples);
        int used = 0;
        double sum = 0;
        for (int k = 0; k < samples; k++) {
            if (usable[k]) {
                used++;
                sum += figures[k] + figures[samples + k];
            }
        }
        // About the mean, which changes no index but the error of the first ones.
        double mean = sum / (2 * used);
        double squares = 0;
        SummaryStatistics[] first = statistics(variables);
        SummaryStatistics[] total = statistics(variables);
        for (int k = 0; k < samples; k++) {
            if (usable[k]) {
                double a = figures[k] - mean;
                double b = figures[samples + k] - mean;
                squares += a * a + b * b;
                for (int i = 0; i < variables; i++) {
                    double mixed = figures[(i + 2) * samples + k] - mean;
                    first[i].addValue(b * (mixed - a));
                    total[i].addValue((a - mixed) * (a - mixed) / 2);
                }
            }
        }
        double variance = squares > 0 ? squares / (2 * used) : Double.NaN;
        return new SobolIndices(
                parts(first, SummaryStatistics::getMean, variance),
                parts(total, SummaryStatistics::getMean, variance),
                parts(first, SobolIndices::standardError, variance),
                parts(total, SobolIndices::standardError, variance),
                variance,
                used);
    }

    private static SummaryStatistics[] statistics(int count) {
        return IntStream.range(0, count).mapToObj(i -> new SummaryStatistics()).toArray(SummaryStatistics[]::new);
    }

    private static double standardError(SummaryStatistics terms) {
        return terms.getStandardDeviation() / Math.sqrt((double) terms.getN());
    }

    private static double[] parts(
            SummaryStatistics[] terms, ToDoubleFunction<SummaryStatistics> number, double variance) {
        return Arrays.stream(terms)
                .mapToDouble(of -> number.applyAsDouble(of) / variance)
                .toArray();
    }

    private static boolean[] usable(double[] figures, int sets, int samples) {
        boolean[] usable = new boolean[samples];
        for (int k = 0; k < samples; k++) {
            usable[k] = true;
            for (int set = 0; set < sets; set++) {
                usable[k] &= Double.isFinite(figures[set * samples + k]);
            }
        }
        return usable;
    }
}
