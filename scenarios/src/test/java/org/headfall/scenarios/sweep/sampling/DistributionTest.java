package org.headfall.scenarios.sweep.sampling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.stream.Stream;
import org.apache.commons.math3.distribution.LogNormalDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.RealDistribution;
import org.apache.commons.math3.distribution.TriangularDistribution;
import org.apache.commons.math3.distribution.UniformRealDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Against the distributions of Apache Commons Math. */
class DistributionTest {

    static Stream<Arguments> pairs() {
        return Stream.of(
                Arguments.of(new Distribution.Uniform(2, 5), new UniformRealDistribution(2, 5)),
                Arguments.of(new Distribution.Normal(250, 40), new NormalDistribution(250, 40)),
                Arguments.of(new Distribution.Lognormal(250, 0.5), new LogNormalDistribution(Math.log(250), 0.5)),
                Arguments.of(new Distribution.Triangular(1, 2, 5), new TriangularDistribution(1, 2, 5)),
                Arguments.of(new Distribution.Triangular(1, 1, 5), new TriangularDistribution(1, 1, 5)));
    }

    @ParameterizedTest
    @MethodSource("pairs")
    void agreesWithTheReference(Distribution distribution, RealDistribution reference) {
        for (double p : new double[] {0.001, 0.1, 0.25, 0.5, 0.9, 0.999}) {
            double value = reference.inverseCumulativeProbability(p);
            assertEquals(value, distribution.quantile(p), 1e-6 * Math.abs(value));
            assertEquals(p, distribution.probability(value), 1e-8);
        }
    }

    @Test
    void aCutDistributionKeepsTheProportionsOfWhatIsLeft() {
        Distribution whole = new Distribution.Normal(0, 1);
        Distribution cut = new Distribution.Truncated(whole, -1, 2);
        double share = whole.probability(2) - whole.probability(-1);
        for (double value : new double[] {-0.9, 0, 1.5}) {
            double expected = (whole.probability(value) - whole.probability(-1)) / share;
            assertEquals(expected, cut.probability(value), 1e-12);
            assertEquals(value, cut.quantile(expected), 1e-9);
        }
        assertEquals(-1, cut.quantile(1e-15), 1e-9);
        assertEquals(2, cut.quantile(1 - 1e-15), 1e-6);
    }

    @Test
    void refusesParametersThatMakeNone() {
        assertThrows(IllegalArgumentException.class, () -> new Distribution.Uniform(2, 2));
        assertThrows(IllegalArgumentException.class, () -> new Distribution.Normal(2, 0));
        assertThrows(IllegalArgumentException.class, () -> new Distribution.Lognormal(0, 1));
        assertThrows(IllegalArgumentException.class, () -> new Distribution.Triangular(1, 6, 5));
        Distribution normal = new Distribution.Normal(0, 1);
        assertThrows(IllegalArgumentException.class, () -> new Distribution.Truncated(normal, 3, 2));
    }
}
