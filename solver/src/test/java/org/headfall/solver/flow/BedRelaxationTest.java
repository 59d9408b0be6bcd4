package org.headfall.solver.flow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * The sum of relaxation terms beside what it stands for: a bed with a fixed head on top whose flow into the aquifer, per area
 * and metre of drawdown, is {@code K'/b' x coth x} in Laplace space (Hantush 1960; Carslaw and Jaeger 1959, section 3.3, for the
 * slab with one face held and the other changed at once).
 */
class BedRelaxationTest {

    private static final double FAST_WEIGHT = BedRelaxation.FAST_WEIGHT;

    /** Water that an even fall has drawn from the bed in the end: a third of its storage, {@code coth x - 1/x = x/3 - ...}. */
    @Test
    void storesAThirdOfTheBedInTheEnd() {
        double stored = FAST_WEIGHT;
        for (int term = 0; term < BedRelaxation.RATE.length; term++) {
            stored += BedRelaxation.WEIGHT[term] / BedRelaxation.RATE[term];
        }
        assertEquals(1.0 / 3, stored, 1e-9);
    }

    @Test
    void weightsAreWithinTheirStatedErrorInLaplaceSpace() {
        double largest = 0;
        for (double exponent = -3; exponent <= Math.log10(2e7); exponent += 0.01) {
            double p = Math.pow(10, exponent);
            double x = Math.sqrt(p);
            double exact = x / Math.tanh(x);
            double sum = 1 + FAST_WEIGHT * p;
            for (int term = 0; term < BedRelaxation.RATE.length; term++) {
                sum += BedRelaxation.WEIGHT[term] * p / (p + BedRelaxation.RATE[term]);
            }
            largest = Math.max(largest, Math.abs(sum / exact - 1));
        }
        assertTrue(largest <= 1.6e-4, "largest error " + largest);
    }

    /**
     * After a step of head the slab gives {@code 1 + 2 sum exp(-n^2 pi^2 t)} (Carslaw and Jaeger 1959), the terms {@code 1 + sum
     * w exp(-l t)}.
     */
    @Test
    void weightsAreWithinTheirStatedErrorAfterASuddenStep() {
        double largest = 0;
        for (double exponent = -6; exponent <= 1; exponent += 0.02) {
            double t = Math.pow(10, exponent);
            double exact = 1
                    + 2
                            * IntStream.rangeClosed(1, 5000)
                                    .mapToDouble(n -> Math.exp(-Math.pow(n * Math.PI, 2) * t))
                                    .sum();
            double sum = 1;
            for (int term = 0; term < BedRelaxation.RATE.length; term++) {
                sum += BedRelaxation.WEIGHT[term] * Math.exp(-BedRelaxation.RATE[term] * t);
            }
            largest = Math.max(largest, Math.abs(sum / exact - 1));
        }
        assertTrue(largest <= 0.012, "largest error " + largest);
    }
}
