package org.headfall.scenarios.sweep.statistics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.apache.commons.math3.stat.descriptive.rank.Percentile;
import org.apache.commons.math3.stat.interval.WilsonScoreInterval;
import org.headfall.scenarios.sweep.sampling.Sampling;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StatisticsTest {

    private static double ishigami(double[] x) {
        return Math.sin(x[0]) + 7 * Math.pow(Math.sin(x[1]), 2) + 0.1 * Math.pow(x[2], 4) * Math.sin(x[0]);
    }

    /**
     * The numbers 0 to 7 are their own ranks. By the variance of a sum of independent terms their binary digits make 1/21,
     * 4/21 and 16/21 of their variance; the share between values of a choice is lessened by the degrees of freedom.
     */
    @Test
    void leavesToWhatIsNotRankedItsShareOfTheVariance() {
        double[] number = {0, 1, 2, 3, 4, 5, 6, 7};
        double[] ones = Arrays.stream(number).map(n -> n % 2).toArray();
        double[] fours = Arrays.stream(number).map(n -> n < 4 ? 0 : 1).toArray();
        assertEquals(20.0 / 21, Unexplained.share(number, List.of(ones), List.of()), 1e-12);
        assertEquals(4.0 / 21, Unexplained.share(number, List.of(ones, fours), List.of()), 1e-12);
        assertEquals(5.0 / 21 * 7 / 6, Unexplained.share(number, List.of(), List.of(fours)), 1e-12);
        assertTrue(Double.isNaN(Unexplained.share(new double[4], List.of(), List.of())));
    }

    /**
     * The function of Ishigami and Homma (1990), "An importance quantification technique in uncertainty analysis for
     * computer models", with a = 7 and b = 0.1, has the variance {@code a²/8 + b π⁴/5 + b² π⁸/18 + 1/2} and the parts
     * {@code (1 + b π⁴/5)²/2}, {@code a²/8}, 0 of single variables and {@code b² π⁸ (1/18 - 1/50)} of the first with the
     * third.
     */
    @Test
    void findsTheIndicesOfIshigami() {
        double a = 7;
        double b = 0.1;
        double variance = a * a / 8 + b * Math.pow(Math.PI, 4) / 5 + b * b * Math.pow(Math.PI, 8) / 18 + 0.5;
        double first = Math.pow(1 + b * Math.pow(Math.PI, 4) / 5, 2) / 2 / variance;
        double second = a * a / 8 / variance;
        double together = b * b * Math.pow(Math.PI, 8) * (1.0 / 18 - 1.0 / 50) / variance;
        int samples = 8192;
        double[][] both = Sampling.SOBOL_SEQUENCE.points(samples, 6, 3);
        double[] figures = new double[5 * samples];
        for (int k = 0; k < samples; k++) {
            double[] x = Arrays.stream(both[k]).map(u -> (2 * u - 1) * Math.PI).toArray();
            double[] one = Arrays.copyOf(x, 3);
            figures[k] = ishigami(one);
            figures[samples + k] = ishigami(Arrays.copyOfRange(x, 3, 6));
            for (int i = 0; i < 3; i++) {
                double[] mixed = one.clone();
                mixed[i] = x[3 + i];
                figures[(i + 2) * samples + k] = ishigami(mixed);
            }
        }
        SobolIndices found = SobolIndices.of(figures, 3);
        assertArrayEquals(new double[] {first, second, 0}, found.first(), 0.01);
        assertArrayEquals(new double[] {first + together, second, together}, found.total(), 0.01);
        for (int i = 0; i < 3; i++) {
            assertEquals(new double[] {first, second, 0}[i], found.first()[i], 4 * found.firstError()[i]);
            assertEquals(
                    new double[] {first + together, second, together}[i], found.total()[i], 4 * found.totalError()[i]);
        }
        // A run that failed takes its sample away and changes little.
        figures[5] = Double.NaN;
        SobolIndices without = SobolIndices.of(figures, 3);
        assertEquals(samples - 1, without.samples());
        assertArrayEquals(found.total(), without.total(), 0.002);
        assertThrows(IllegalArgumentException.class, () -> SobolIndices.of(new double[7], 1));
    }

    @ParameterizedTest
    @CsvSource({"0,20", "1,20", "10,20", "19,20", "20,20", "300,1000"})
    void boundsAShareAsTheReferenceDoes(int count, int of) {
        Share share = new Share(count, of);
        var reference = new WilsonScoreInterval().createInterval(of, count, 0.95);
        assertEquals(Math.max(0, reference.getLowerBound()), share.low(), 1e-9);
        assertEquals(Math.min(1, reference.getUpperBound()), share.high(), 1e-9);
    }

    /** The scale of Mastrandrea and others (2010), Guidance note for lead authors of the IPCC on uncertainties. */
    @ParameterizedTest
    @CsvSource({
        "995,virtually certain",
        "950,very likely",
        "700,likely",
        "500,as likely as not",
        "200,unlikely",
        "50,very unlikely"
    })
    void wordsAProbability(int ofThousand, String words) {
        assertEquals(words, new Share(ofThousand, 1000).words());
    }

    /** Thirty runs that all agree still leave a probability of one in ten that they would not. */
    @Test
    void doesNotCallFewRunsCertain() {
        assertEquals("very likely", new Share(32, 32).words());
        assertEquals("unknown", new Share(0, 0).words());
    }

    @Test
    void ranksWithoutTheRunsThatHaveNoFigure() {
        double[] x = {1, 2, 3, 4, 5};
        double[] y = {10, 20, Double.NaN, 35, 31};
        // By hand: ranks 1 2 3 4 against 1 2 4 3, 1 - 6 (1 + 1) / (4 (16 - 1)).
        assertEquals(0.8, Ranks.correlation(x, y), 1e-12);
        assertTrue(Double.isNaN(Ranks.correlation(x, new double[] {1, 1, 1, 1, 1})));
        double[] values = {3, 1, 4, 1, 5, 9, 2, 6};
        Percentile reference = new Percentile().withEstimationType(Percentile.EstimationType.R_7);
        for (double share : new double[] {0.1, 0.5, 0.9}) {
            assertEquals(reference.evaluate(values, 100 * share), Ranks.quantile(values, share), 1e-12);
        }
    }

    /** By hand: atanh 0.5 = 0.5493, 1.96 sqrt(1.06 / 47) = 0.2943, tanh of 0.2550 and 0.8436. */
    @Test
    void boundsARankCorrelation() {
        assertArrayEquals(new double[] {0.2496, 0.6878}, Ranks.interval(0.5, 50), 2e-4);
        assertTrue(Double.isNaN(Ranks.interval(0.5, 3)[0]));
    }

    @Test
    void picksWhatNothingBeats() {
        double[][] goodness = {{1, 5}, {2, 4}, {2, 3}, {3, 1}, {0, 5}, {3, Double.NaN}, {2, 4}};
        assertArrayEquals(new int[] {0, 1, 3, 6}, Compromises.among(goodness));
    }

    /** With one held, Kendall (1942): (rxy - rxz ryz) / sqrt((1 - rxz^2) (1 - ryz^2)). */
    @Test
    void takesOutWhatIsHeld() {
        SplittableRandom random = new SplittableRandom(2);
        double[] z = random.doubles(60).toArray();
        double[] x = Arrays.stream(z).map(of -> of + random.nextDouble()).toArray();
        double[] y =
                Arrays.stream(z).map(of -> 3 * of + 0.1 * random.nextDouble()).toArray();
        double xy = Ranks.correlation(x, y);
        double xz = Ranks.correlation(x, z);
        double yz = Ranks.correlation(y, z);
        assertEquals(
                (xy - xz * yz) / Math.sqrt((1 - xz * xz) * (1 - yz * yz)),
                Ranks.partialCorrelation(x, y, List.of(z)),
                1e-9);
        assertTrue(xy > 0.5);
        assertEquals(Double.NaN, Ranks.partialCorrelation(x, y, List.of(x)));
    }
}
