package org.headfall.scenarios.sweep.sampling;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.BitSet;
import org.apache.commons.math3.stat.correlation.SpearmansCorrelation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class SamplingTest {

    /** What McKay, Beckman and Conover (1979) ask of a Latin hypercube: each of n equal parts of an axis has one point. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 7, 64, 1000})
    void latinHypercubeHasOnePointInEachPartOfEachAxis(int count) {
        double[][] points = Sampling.LATIN_HYPERCUBE.points(count, 5, 42);
        for (int axis = 0; axis < 5; axis++) {
            BitSet parts = new BitSet();
            for (double[] point : points) {
                parts.set((int) Math.floor(point[axis] * count));
            }
            assertEquals(count, parts.cardinality());
            assertEquals(count, parts.length());
        }
    }

    /** The mean of a product over the unit cube is known; a low-discrepancy sequence finds it far better than chance. */
    @Test
    void sobolSequenceIntegratesAProduct() {
        int count = 4096;
        double sum = 0;
        for (double[] point : Sampling.SOBOL_SEQUENCE.points(count, 4, 7)) {
            sum += Arrays.stream(point).map(x -> 2 * x).reduce(1, (a, b) -> a * b);
        }
        // Plain random points would be off by about sqrt((4/3)^4 - 1) / 64 = 0.023.
        assertEquals(1, sum / count, 0.002);
    }

    @ParameterizedTest
    @EnumSource(Sampling.class)
    void theSeedDecidesThePoints(Sampling sampling) {
        double[][] first = sampling.points(20, 3, 5);
        assertArrayEquals(first, sampling.points(20, 3, 5));
        assertFalse(Arrays.deepEquals(first, sampling.points(20, 3, 6)));
        for (double[] point : first) {
            assertTrue(Arrays.stream(point).allMatch(x -> x > 0 && x < 1));
        }
    }

    @Test
    void imposesRankCorrelationsAndKeepsTheMargins() {
        double[][] points = Sampling.LATIN_HYPERCUBE.points(2000, 3, 11);
        double[][] before = margins(points);
        new RankCorrelations(new double[][] {{1, 0.7, -0.3}, {0.7, 1, 0}, {-0.3, 0, 1}}).impose(points);
        assertArrayEquals(before, margins(points));
        SpearmansCorrelation found = new SpearmansCorrelation();
        assertEquals(0.7, found.correlation(axis(points, 0), axis(points, 1)), 0.04);
        assertEquals(-0.3, found.correlation(axis(points, 0), axis(points, 2)), 0.05);
        assertEquals(0, found.correlation(axis(points, 1), axis(points, 2)), 0.05);
    }

    @Test
    void refusesCorrelationsThatContradictEachOther() {
        double[][] impossible = {{1, 0.9, 0.9}, {0.9, 1, -0.9}, {0.9, -0.9, 1}};
        assertThrows(IllegalArgumentException.class, () -> new RankCorrelations(impossible));
    }

    private static double[] axis(double[][] points, int axis) {
        return Arrays.stream(points).mapToDouble(point -> point[axis]).toArray();
    }

    private static double[][] margins(double[][] points) {
        double[][] margins = new double[points[0].length][];
        Arrays.setAll(
                margins, axis -> Arrays.stream(axis(points, axis)).sorted().toArray());
        return margins;
    }
}
