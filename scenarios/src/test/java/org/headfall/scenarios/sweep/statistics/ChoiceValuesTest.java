package org.headfall.scenarios.sweep.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Comparator;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.StatUtils;
import org.apache.commons.math3.stat.inference.TTest;
import org.junit.jupiter.api.Test;

class ChoiceValuesTest {

    private static final double[] FIRST = {3.1, 14.4, 2.9, 25.0, 13.6, 8.8};
    private static final double[] SECOND = {3.6, 14.6, 3.7, 25.2, 14.2, 9.5};

    /** Paired differences by Commons Math: told apart at 5 % where its two-sided probability is less. */
    @Test
    void tellsChoicesApartLikePairs() {
        ChoiceValues values = new ChoiceValues(new double[][] {FIRST, SECOND}, OptionalDouble.empty());
        assertTrue(new TTest().pairedTTest(FIRST, SECOND) < 0.05);
        assertTrue(values.areToldApart(0, 1));
        // Each mean by itself is far less sure. Student's t of 5 degrees of freedom, 97.5 %: 2.571, Fisher and Yates
        // (1963).
        double deviation = Math.sqrt(StatUtils.variance(FIRST));
        assertEquals(2.571 * deviation / Math.sqrt(6), values.error(0), 2e-3);
        double[] other = {9.6, 1.6, 30.7, 5.2, 4.2, 19.5};
        assertFalse(new TTest().pairedTTest(FIRST, other) < 0.05);
        assertFalse(new ChoiceValues(new double[][] {FIRST, other}, OptionalDouble.empty()).areToldApart(0, 1));
    }

    @Test
    void takesOnlySamplesThatAllChoicesHave() {
        double[] partly = {100, Double.NaN, 300, 400};
        double[] whole = {1, 2, 3, 4};
        double[] none = {Double.NaN, Double.NaN, Double.NaN, Double.NaN};
        ChoiceValues values = new ChoiceValues(new double[][] {partly, whole, none}, OptionalDouble.empty());
        assertEquals(3, values.samples());
        assertEquals(8.0 / 3, values.value(1), 1e-12);
        assertTrue(Double.isNaN(values.value(2)));
        assertTrue(Double.isNaN(values.error(2)));
    }

    /**
     * The median of n normal values deviates by {@code sqrt(pi / 2) / sqrt(n)} (large-sample theory: Cramér 1946,
     * Mathematical Methods of Statistics, section 28.5; from memory), the difference of two choices with samples that are nearly alike by far less.
     */
    @Test
    void errsLikeTheMedianOfNormalValues() {
        SplittableRandom random = new SplittableRandom(11);
        int samples = 2000;
        double[][] figures = new double[3][samples];
        for (int k = 0; k < samples; k++) {
            double common = random.nextGaussian();
            for (double[] choice : figures) {
                choice[k] = common + 0.02 * random.nextGaussian();
            }
            figures[1][k] += 0.04;
        }
        ChoiceValues values = new ChoiceValues(figures, OptionalDouble.of(0.5));
        // Its standard error is of 400 draws: some 4 %, and 10 % for the few values near the median.
        assertEquals(1.961 * Math.sqrt(Math.PI / 2 / samples), values.error(0), 0.25 * 1.961 * 0.028);
        assertTrue(values.error(0) > 0.04, "by itself a median is less sure than the difference");
        assertTrue(values.areToldApart(0, 1));
        assertFalse(values.areToldApart(0, 2));
    }

    @Test
    void tellsNothingApartByOneSample() {
        ChoiceValues values = new ChoiceValues(new double[][] {{1}, {2}}, OptionalDouble.empty());
        assertFalse(values.areToldApart(0, 1));
    }

    /**
     * Of choices that are all alike one looks best; it is told apart from any other in no more than 5 % of trials, the meaning
     * of an interval of 95 % for all pairs. Compared with each other choice as if it had been fixed before, it is in some 12 % (4000 trials).
     */
    @Test
    void tellsTheLuckiestOfManyAlikeApartInFewTrials() {
        SplittableRandom random = new SplittableRandom(29);
        int trials = 1000;
        int wrong = 0;
        for (int trial = 0; trial < trials; trial++) {
            double[][] figures = new double[8][20];
            for (double[] choice : figures) {
                Arrays.setAll(choice, k -> random.nextGaussian());
            }
            ChoiceValues values = new ChoiceValues(figures, OptionalDouble.empty());
            int best = IntStream.range(0, 8)
                    .boxed()
                    .max(Comparator.comparingDouble(values::value))
                    .orElseThrow();
            wrong += IntStream.range(0, 8).anyMatch(other -> values.areToldApart(best, other)) ? 1 : 0;
        }
        // Two standard errors of a share of 5 % in 1000 trials: 1.4 %.
        assertTrue(wrong <= 0.064 * trials, wrong + " of " + trials);
    }

    /**
     * The 90 % quantile of normal values is 1.2816 (tables of the normal distribution, from memory). Of 20 samples two lie beyond
     * it, and no error is told; of 60 six, and the interval holds it in some 95 % of trials, less what so few leave.
     */
    @Test
    void tellsNoErrorOfExtremeQuantilesOfFewSamples() {
        SplittableRandom random = new SplittableRandom(3);
        int trials = 300;
        int held = 0;
        for (int trial = 0; trial < trials; trial++) {
            double[][] figures = {
                IntStream.range(0, 60).mapToDouble(k -> random.nextGaussian()).toArray()
            };
            ChoiceValues values = new ChoiceValues(figures, OptionalDouble.of(0.9));
            held += Math.abs(values.value(0) - 1.2816) <= values.error(0) ? 1 : 0;
            ChoiceValues few = new ChoiceValues(new double[][] {Arrays.copyOf(figures[0], 20)}, OptionalDouble.of(0.9));
            assertTrue(Double.isNaN(few.error(0)));
        }
        assertTrue(held > 0.89 * trials, held + " of " + trials);
    }
}
