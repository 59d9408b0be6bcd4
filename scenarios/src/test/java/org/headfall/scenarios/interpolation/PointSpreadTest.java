package org.headfall.scenarios.interpolation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import java.util.Random;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class PointSpreadTest {
    /**
     * The worked example of ordinary kriging in E. H. Isaaks and R. M. Srivastava (1989), An introduction to applied
     * geostatistics, Oxford University Press, chapter 12; figures from memory. Covariance {@code 10 exp(-0.3 h)}, seven
     * samples, estimate at (65, 137).
     */
    private static final double[] X = {61, 63, 64, 68, 71, 73, 75};

    private static final double[] Y = {139, 140, 129, 128, 140, 141, 128};
    private static final double[] V = {477, 696, 227, 646, 606, 791, 783};
    private static final double[] WEIGHTS = {0.173, 0.318, 0.129, 0.086, 0.151, 0.057, 0.086};

    private static PointSpread at(double x, double y) {
        return new PointSpread(new CellCentres(new double[] {x}, new double[] {y}), 2);
    }

    @Test
    void krigesTheTextbookExample() {
        double estimate = krige(V);
        assertEquals(592.7, estimate, 0.1);
        for (int i = 0; i < WEIGHTS.length; i++) {
            double[] one = new double[V.length];
            one[i] = 1;
            assertEquals(WEIGHTS[i], krige(one), 6e-4, "weight " + i);
        }
    }

    private static double krige(double[] values) {
        return at(65, 137)
                .kriging(new ScatteredValues(X, Y, values), ValueScale.PLAIN, OptionalDouble.of(10), 0)
                .cellValues()[0];
    }

    private static double[] random(Random random, int count, double length) {
        double[] numbers = new double[count];
        for (int i = 0; i < count; i++) {
            numbers[i] = random.nextDouble() * length;
        }
        return numbers;
    }

    /** Against the system of weights with a Lagrange multiplier, solved for each place by itself. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void equalsTheSystemOfWeights(long seed) {
        Random random = new Random(seed);
        int count = 3 + random.nextInt(30);
        double[] x = random(random, count, 1e5);
        double[] y = random(random, count, 6e4);
        double[] t = random(random, count, 900);
        for (int i = 0; i < count; i++) {
            t[i] += 5;
        }
        double range = 1e4 + 1e5 * random.nextDouble();
        double nugget = seed % 2 == 0 ? 0.3 * random.nextDouble() : 0;
        CellCentres cells = new CellCentres(random(random, 3, 1e5), random(random, 3, 6e4));
        double[] values = new PointSpread(cells, 2)
                .kriging(new ScatteredValues(x, y, t), ValueScale.LOGARITHMIC, OptionalDouble.of(range), nugget)
                .cellValues();
        for (int cell = 0; cell < values.length; cell++) {
            double expected = weighted(x, y, t, range, nugget, cells.x()[cell % 3], cells.y()[cell / 3]);
            assertEquals(1, values[cell] / expected, 1e-9, "seed " + seed + ", cell " + cell);
        }
    }

    private static double weighted(
            double[] x, double[] y, double[] t, double range, double nugget, double atX, double atY) {
        int n = x.length;
        DMatrixRMaj matrix = new DMatrixRMaj(n + 1, n + 1);
        DMatrixRMaj right = new DMatrixRMaj(n + 1, 1);
        DMatrixRMaj weights = new DMatrixRMaj(n + 1, 1);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                double h = Math.hypot(x[i] - x[j], y[i] - y[j]);
                matrix.set(i, j, i == j ? 1 : (1 - nugget) * Math.exp(-3 * h / range));
            }
            matrix.set(i, n, 1);
            matrix.set(n, i, 1);
            right.set(i, 0, (1 - nugget) * Math.exp(-3 * Math.hypot(x[i] - atX, y[i] - atY) / range));
        }
        right.set(n, 0, 1);
        assertTrue(CommonOps_DDRM.solve(matrix, right, weights));
        double sum = 0;
        for (int i = 0; i < n; i++) {
            sum += weights.get(i) * Math.log(t[i]);
        }
        return Math.exp(sum);
    }

    /** 40 tests on 150,000 cells of 500 by 300 m; the points stand on cell centres. */
    @Test
    void goesThroughTheValuesOnALargeGridWithoutANugget() {
        long seed = 11;
        Random random = new Random(seed);
        CellCentres cells = CellCentres.between(edges(500, 300), edges(300, 250));
        int[] cell = random.ints(0, cells.count()).distinct().limit(40).toArray();
        double[] x = new double[40];
        double[] y = new double[40];
        double[] t = new double[40];
        for (int i = 0; i < 40; i++) {
            x[i] = cells.x()[cell[i] % 500];
            y[i] = cells.y()[cell[i] / 500];
            t[i] = Math.exp(3 + 4 * random.nextDouble());
        }
        SpreadValues spread = new PointSpread(cells, 2)
                .kriging(new ScatteredValues(x, y, t), ValueScale.LOGARITHMIC, OptionalDouble.empty(), 0);
        for (int i = 0; i < 40; i++) {
            assertEquals(1, spread.cellValues()[cell[i]] / t[i], 1e-9, "seed " + seed + ", point " + i);
        }
        assertTrue(assertInstanceOf(SpreadValues.Kriging.class, spread.method()).rangeFitted());
    }

    private static double[] edges(int cells, double length) {
        double[] edges = new double[cells + 1];
        for (int i = 0; i <= cells; i++) {
            edges[i] = i * length;
        }
        return edges;
    }

    @Test
    void aNuggetSmoothesInsteadOfJumping() {
        double[] x = {0, 1000, 2000, 3000};
        double[] y = {0, 0, 0, 0};
        ScatteredValues points = new ScatteredValues(x, y, new double[] {1, 5, 1, 5});
        PointSpread spread = new PointSpread(new CellCentres(new double[] {1000, 1000.001}, new double[] {0}), 2);
        double[] values = spread.kriging(points, ValueScale.PLAIN, OptionalDouble.of(5000), 0.5)
                .cellValues();
        assertTrue(values[0] < 4.5, "value " + values[0]);
        assertEquals(values[0], values[1], 1e-4);
    }

    @Test
    void farFromAllPointsKrigingGivesTheirMean() {
        ScatteredValues points =
                new ScatteredValues(new double[] {0, 1e6, 2e6}, new double[] {0, 0, 0}, new double[] {10, 100, 1000});
        double[] far = at(0, 1e9)
                .kriging(points, ValueScale.LOGARITHMIC, OptionalDouble.of(1000), 0)
                .cellValues();
        assertEquals(100, far[0], 1e-9);
    }

    @ParameterizedTest
    @EnumSource(ValueScale.class)
    void equalValuesGiveExactlyThatValue(ValueScale scale) {
        PointSpread spread = new PointSpread(new CellCentres(new double[] {5, 70}, new double[] {3}), 2);
        ScatteredValues points =
                new ScatteredValues(new double[] {0, 10, 30}, new double[] {0, 9, 2}, new double[] {350, 350, 350});
        for (SpreadValues values : new SpreadValues[] {
            spread.kriging(points, scale, OptionalDouble.empty(), 0),
            spread.kriging(points, scale, OptionalDouble.of(10), 0.2),
            spread.inverseDistance(points, scale)
        }) {
            assertEquals(350, values.cellValues()[0]);
            assertEquals(350, values.cellValues()[1]);
            assertEquals(new SpreadValues.SameEverywhere(), values.method());
        }
        assertEquals(350, spread.nearest(points).cellValues()[1]);
    }

    @Test
    void withTwoPointsInverseDistancesAreUsedAndSaid() {
        ScatteredValues points =
                new ScatteredValues(new double[] {0, 30}, new double[] {0, 0}, new double[] {10, 1000});
        SpreadValues values = at(10, 0).kriging(points, ValueScale.LOGARITHMIC, OptionalDouble.empty(), 0);
        // weights 1/100 and 1/400: a fifth of the way from ln 10 to ln 1000
        assertEquals(Math.pow(10, 1.4), values.cellValues()[0], 1e-12);
        assertEquals(new SpreadValues.InverseDistanceSquared(ValueScale.LOGARITHMIC, true), values.method());
    }

    @Test
    void inverseDistancesKeepTheValuesAtThePoints() {
        ScatteredValues points = new ScatteredValues(new double[] {0, 30}, new double[] {0, 0}, new double[] {10, 20});
        assertEquals(20, at(30, 0).inverseDistance(points, ValueScale.PLAIN).cellValues()[0]);
        assertEquals(12, at(10, 0).inverseDistance(points, ValueScale.PLAIN).cellValues()[0], 1e-12);
    }

    @Test
    void theNearestPointCounts() {
        ScatteredValues points = new ScatteredValues(new double[] {0, 30}, new double[] {0, 0}, new double[] {10, 20});
        assertEquals(10, at(14.9, 0).nearest(points).cellValues()[0]);
        assertEquals(20, at(15.1, 0).nearest(points).cellValues()[0]);
    }

    @Test
    void cellsAreCountedByRowsFromTheSouth() {
        ScatteredValues points = new ScatteredValues(new double[] {15, 5}, new double[] {5, 15}, new double[] {1, 2});
        CellCentres cells = CellCentres.between(new double[] {0, 10, 20}, new double[] {0, 10, 20});
        double[] values = new PointSpread(cells, 2).nearest(points).cellValues();
        assertEquals(1, values[1]);
        assertEquals(2, values[2]);
    }

    @Test
    void pointsThatCannotBeUsedAreRefused() {
        assertThrows(
                IllegalArgumentException.class, () -> new ScatteredValues(new double[0], new double[0], new double[0]));
        assertThrows(
                IllegalArgumentException.class,
                () -> new ScatteredValues(new double[] {1, 1}, new double[] {2, 2}, new double[] {3, 4}));
        assertThrows(
                IllegalArgumentException.class,
                () -> new ScatteredValues(new double[] {1}, new double[] {2}, new double[] {Double.NaN}));
        ScatteredValues withZero =
                new ScatteredValues(new double[] {1, 2, 3}, new double[] {2, 2, 2}, new double[] {3, 0, 1});
        assertThrows(
                IllegalArgumentException.class,
                () -> at(0, 0).kriging(withZero, ValueScale.LOGARITHMIC, OptionalDouble.empty(), 0));
        assertThrows(
                IllegalArgumentException.class,
                () -> at(0, 0).kriging(withZero, ValueScale.PLAIN, OptionalDouble.of(-5), 0));
        assertThrows(
                IllegalArgumentException.class,
                () -> at(0, 0).kriging(withZero, ValueScale.PLAIN, OptionalDouble.empty(), 1));
    }
}
