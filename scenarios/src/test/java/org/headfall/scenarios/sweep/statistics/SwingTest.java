package org.headfall.scenarios.sweep.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.inference.TTest;
import org.junit.jupiter.api.Test;

class SwingTest {

    private static final double[] LESS = {3.1, 4.4, 2.9, 5.0, 3.6};
    private static final double[] MORE = {6.2, 5.9, 7.7, 5.1, 9.3};

    private static final double[] BOTH = IntStream.range(0, 10)
            .mapToDouble(i -> i < 5 ? LESS[i] : MORE[i - 5])
            .toArray();
    private static final int[] FIRST = {0, 1, 2, 3, 4};
    private static final int[] SECOND = {5, 6, 7, 8, 9};

    /** Welch (1938) as Commons Math computes it: the statistic is the difference over its standard error. */
    @Test
    void errsLikeIndependentRuns() {
        MeanDifference found = MeanDifference.of(BOTH, IntStream.range(0, 10).toArray(), FIRST, SECOND);
        assertEquals(new TTest().t(MORE, LESS), found.value() / found.standardError(), 1e-12);
        // Student's t of 4 degrees of freedom, 97.5 %: 2.776, Fisher and Yates (1963), table III.
        assertEquals(2.776, found.halfWidth(1) / found.standardError(), 5e-4);
    }

    /** Paired differences as Commons Math computes them, where each sample is in both groups. */
    @Test
    void errsLikePairsWhereSamplesAreRepeated() {
        int[] sample = IntStream.range(0, 10).map(i -> i % 5).toArray();
        MeanDifference found = MeanDifference.of(BOTH, sample, FIRST, SECOND);
        assertEquals(new TTest().pairedT(MORE, LESS), found.value() / found.standardError(), 1e-12);
    }

    /** Runs made three times over say no more than once: the statistic is that of the samples. */
    @Test
    void gainsNothingFromRunsThatRepeatASample() {
        double[] thrice = IntStream.range(0, 30).mapToDouble(i -> BOTH[i % 10]).toArray();
        int[] sample = IntStream.range(0, 30).map(i -> i % 10).toArray();
        int[] first = IntStream.range(0, 30).filter(i -> i % 10 < 5).toArray();
        int[] second = IntStream.range(0, 30).filter(i -> i % 10 >= 5).toArray();
        MeanDifference found = MeanDifference.of(thrice, sample, first, second);
        assertEquals(new TTest().t(MORE, LESS), found.value() / found.standardError(), 1e-12);
        assertEquals(4, found.freedom());
    }

    @Test
    void doesNotKnowTheErrorOfASingleSample() {
        MeanDifference found = MeanDifference.of(BOTH, new int[10], FIRST, SECOND);
        assertTrue(Double.isNaN(found.halfWidth(1)));
        assertFalse(Swing.of(BOTH, BOTH, new int[10]).isToldApart());
    }

    @Test
    void swingsBetweenTheTenths() {
        double[] variable = IntStream.range(0, 100).mapToDouble(i -> i).toArray();
        double[] figure = Arrays.stream(variable).map(x -> 1000 - 2 * x).toArray();
        Swing swing = Swing.of(variable, figure, IntStream.range(0, 100).toArray());
        // Means of the first ten and of the last ten places.
        assertEquals(1000 - 2 * 4.5, swing.low(), 1e-12);
        assertEquals(1000 - 2 * 94.5, swing.high(), 1e-12);
        assertEquals(9, swing.atLow());
        assertEquals(90, swing.atHigh());
        assertTrue(swing.isToldApart());
    }

    @Test
    void namesTheValuesWithoutOrderThatDifferMost() {
        double[] values = {1, 2, 3, 1, 2, 3};
        double[] figures = {10, 30, 20, 12, 34, Double.NaN};
        Swing swing = Swing.betweenValues(values, figures, new int[] {0, 1, 2, 3, 4, 5});
        assertEquals(11, swing.low());
        assertEquals(32, swing.high());
        assertEquals(1, swing.atLow());
        assertEquals(2, swing.atHigh());
        // Standard error sqrt(2 / 2 + 8 / 2) and one degree of freedom, where Student's t is the tangent: of three
        // differences together 1 - 0.05 / 6 of the probability lies below.
        assertEquals(Math.sqrt(5) * Math.tan(Math.PI * (0.5 - 0.05 / 6)), swing.error(), 1e-9);
        assertFalse(swing.isToldApart());
    }

    /**
     * By definition of the interval: of 2,000 noises without any influence some 5 % are told apart, of the greatest
     * difference of four values at most so many.
     */
    @Test
    void tellsNoiseApartAsOftenAsItSays() {
        SplittableRandom random = new SplittableRandom(5);
        int tenths = 0;
        int values = 0;
        int trials = 2000;
        int[] sample = IntStream.range(0, 200).map(i -> i % 100).toArray();
        for (int trial = 0; trial < trials; trial++) {
            double[] number = new double[200];
            double[] choice = new double[200];
            double[] figure = new double[200];
            for (int i = 0; i < 100; i++) {
                double common = random.nextGaussian();
                number[i] = random.nextDouble();
                number[100 + i] = number[i];
                choice[i] = 1 + i % 4;
                choice[100 + i] = choice[i];
                figure[i] = common + 0.3 * random.nextGaussian();
                figure[100 + i] = common + 0.3 * random.nextGaussian();
            }
            tenths += Swing.of(number, figure, sample).isToldApart() ? 1 : 0;
            values += Swing.betweenValues(choice, figure, sample).isToldApart() ? 1 : 0;
        }
        // Four standard deviations of a count of 5 % of 2,000. With degrees of freedom of one group of ten the interval
        // is
        // somewhat too wide.
        double most = 0.05 * trials + 4 * Math.sqrt(0.05 * 0.95 * trials);
        assertTrue(tenths < most && tenths > 0.02 * trials, "by tenths: " + tenths);
        assertTrue(values < most && values > 0.01 * trials, "by values: " + values);
    }
}
