package org.headfall.scenarios.sweep.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class GroupedMeansTest {

    /**
     * Kruskal and Wallis (1952): figures 1 to 15 in three groups of five one above the other have rank sums 15, 40 and 65,
     * so H = 12 / (15 16) (225 + 1600 + 4225) / 5 - 3 16 = 12.5; chi squared with two degrees of freedom exceeds that with
     * probability exp(-12.5 / 2).
     */
    @Test
    void isTheTestOfKruskalAndWallis() {
        double[] rising = IntStream.range(1, 16).mapToDouble(i -> i).toArray();
        GroupedMeans groups =
                GroupedMeans.of(rising, rising, IntStream.range(0, 15).toArray());
        assertEquals(Math.exp(-6.25), groups.probability(), 1e-12);
        assertEquals(3, groups.least(), 1e-12);
        assertEquals(13, groups.greatest(), 1e-12);
    }

    /** Noise is told apart in 5 % of sweeps: 100 of 2000 within some four standard errors of 9.7; the approximation is careful. */
    @Test
    void findsNothingInNoise() {
        SplittableRandom random = new SplittableRandom(11);
        int[] samples = IntStream.range(0, 60).toArray();
        long found = IntStream.range(0, 2000)
                .filter(i -> GroupedMeans.of(
                                        random.doubles(60).toArray(),
                                        random.doubles(60).toArray(),
                                        samples)
                                .probability()
                        <= 0.05)
                .count();
        assertTrue(found > 60 && found < 140, "found " + found);
    }

    @Test
    void countsRunsOfASampleOnce() {
        int[] twice = IntStream.range(0, 30).map(i -> i / 2).toArray();
        double[] rising = IntStream.of(twice).asDoubleStream().toArray();
        assertEquals(Math.exp(-6.25), GroupedMeans.of(rising, rising, twice).probability(), 1e-12);
        assertEquals(GroupedMeans.NONE, GroupedMeans.of(rising, rising, new int[30]));
        assertEquals(
                GroupedMeans.NONE,
                GroupedMeans.of(
                        Arrays.copyOf(rising, 14),
                        Arrays.copyOf(rising, 14),
                        IntStream.range(0, 14).toArray()));
    }
}
