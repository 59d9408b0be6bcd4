package org.headfall.solver.allocation;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ProgrammeTest {

    /** Dantzig 1963, Linear Programming and Extensions: the optimum of two variables lies where two lines cross. */
    @Test
    void findsTheCornerWhereTwoLinesCross() {
        Programme programme = Programme.linear(new double[] {100, 100}, new double[] {-3, -2});
        List<Row> rows = List.of(row(12, 2, 1), row(7, 1, 2));
        Optimum optimum = programme.solve(rows).orElseThrow();
        assertEquals(17.0 / 3, optimum.x()[0], 1e-9);
        assertEquals(2.0 / 3, optimum.x()[1], 1e-9);
        assertEquals(4.0 / 3, programme.prices(rows)[0], 1e-9);
        assertEquals(1.0 / 3, programme.prices(rows)[1], 1e-9);
    }

    private static Row row(double bound, double... coefficients) {
        return new Row(coefficients, bound, 1);
    }

    /** The price of a row is what a little more of its bound gains, by solving again; and the prices explain the value. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void pricesAreFiniteDifferences(long seed) {
        Random random = new Random(seed);
        int n = 60;
        double[] most = new double[n];
        double[] cost = new double[n];
        Arrays.setAll(most, i -> 1000 + 2000 * random.nextDouble());
        Arrays.setAll(cost, i -> -1 - random.nextDouble());
        List<Row> rows = new ArrayList<>();
        for (int k = 0; k < 12; k++) {
            double[] coefficients = new double[n];
            Arrays.setAll(coefficients, i -> 1e-3 * random.nextDouble());
            rows.add(new Row(coefficients, 5 + 10 * random.nextDouble(), 1));
        }
        double[] atLeast = new double[n];
        Arrays.fill(atLeast, 0, 5, -1);
        rows.add(new Row(atLeast, -500, Double.POSITIVE_INFINITY));
        Programme programme = Programme.linear(most, cost);
        Optimum optimum = programme.solve(rows).orElseThrow();
        double[] prices = programme.prices(rows);
        assertTrue(Arrays.stream(prices).max().orElseThrow() > 0);
        for (int k = 0; k < rows.size(); k++) {
            List<Row> changed = new ArrayList<>(rows);
            double more = 1e-6;
            changed.set(k, rows.get(k).withBound(rows.get(k).bound() + more));
            double gain =
                    (optimum.value() - programme.solve(changed).orElseThrow().value()) / more;
            double price = prices[k];
            assertEquals(gain, price, 1e-3 * (1 + gain), "row " + k);
        }
    }

    /** Least squares under a bound, by hand: x + y = 1 at most, from (1, 2) the nearest point is (0, 1). */
    @Test
    void followsCurvature() {
        Programme programme =
                new Programme(new double[] {10, 10}, new double[] {-1, -2}, new double[][] {{1, 0}, {0, 1}});
        Optimum optimum = programme.solve(List.of(row(1, 1, 1))).orElseThrow();
        assertEquals(0, optimum.x()[0], 1e-6);
        assertEquals(1, optimum.x()[1], 1e-6);
    }

    /** The same under x + y = 2 at most: x = 1 - p, y = 2 - p, so the price p is 1/2; a row that does not bind costs nothing. */
    @Test
    void pricesUnderCurvatureAreThoseOfLagrange() {
        Programme programme =
                new Programme(new double[] {10, 4}, new double[] {-1, -2}, new double[][] {{1, 0}, {0, 1}});
        double[] prices = programme.prices(List.of(row(20, 1, 1), row(2, 1, 1), row(6, 1, 3)));
        assertArrayEquals(new double[] {0, 0.5, 0}, prices, 1e-6);
        double[] twice = programme.prices(List.of(row(2, 1, 1), row(4, 2, 2)));
        assertEquals(0.5, twice[0] + 2 * twice[1], 1e-6);
    }

    /**
     * x is to be large, and two rows allow the same 4 of it: the optimum is degenerate. More of either alone gains nothing, less of
     * either costs 1 a unit, and the prices, each between both, add up to what more of both gains.
     */
    @Test
    void pricesBoundGainsWhereTheOptimumIsDegenerate() {
        Programme programme = Programme.linear(new double[] {10}, new double[] {-1});
        double best =
                programme.solve(List.of(row(4, 1), row(4, 1))).orElseThrow().value();
        double[] prices = programme.prices(List.of(row(4, 1), row(4, 1)));
        for (double price : prices) {
            double gain = best
                    - programme
                            .solve(List.of(row(5, 1), row(4, 1)))
                            .orElseThrow()
                            .value();
            double costOfLess =
                    programme.solve(List.of(row(3, 1), row(4, 1))).orElseThrow().value() - best;
            assertEquals(0, gain, 1e-9);
            assertEquals(1, costOfLess, 1e-9);
            assertTrue(price >= gain - 1e-9 && price <= costOfLess + 1e-9, "price " + price);
        }
        assertEquals(1, prices[0] + prices[1], 1e-9);
    }

    /** 3 x + y is to be small, x + y at least 6, y 4 at most and x 5 at most: x = 2, so one more of y saves 2, one less in all 3. */
    @Test
    void pricesHoldWhereZeroBreaksARow() {
        Programme programme = Programme.linear(new double[] {5, 100}, new double[] {3, 1});
        double[] prices = programme.prices(List.of(row(-6, -1, -1), row(4, 0, 1), row(-1, -1, 0.001)));
        assertArrayEquals(new double[] {3, 2, 0}, prices, 1e-6);
    }

    /** At least 10 of x wanted, at most 4 allowed by one row and 7 by another: the first must give way by 6, the second by 3. */
    @Test
    void namesTheRowsThatContradictEachOther() {
        Programme programme = Programme.linear(new double[] {100}, new double[] {1});
        List<Row> rows =
                List.of(new Row(new double[] {-1}, -10, Double.POSITIVE_INFINITY), row(4, 1), row(7, 1), row(50, 1));
        assertEquals(Optional.empty(), programme.solve(rows));
        double[] relaxation = programme.leastRelaxation(rows).orElseThrow();
        assertArrayEquals(new double[] {0, 6, 3, 0}, relaxation, 1e-9);
    }

    /**
     * x and y of at least 10 together wanted. Rows of one limit allow 4 of x and 2 of y, one of another 7 of x. As rows, 4 is
     * the least in all; as limits, the first gives way by 2 for both of its rows.
     */
    @Test
    void rowsThatGiveWayTogetherDoSoOnce() {
        Programme programme = Programme.linear(new double[] {100, 100}, new double[] {1, 1});
        List<Row> rows = List.of(
                new Row(new double[] {-1, -1}, -10, Double.POSITIVE_INFINITY),
                row(4, 1, 0),
                row(2, 0, 1),
                row(7, 1, 0));
        double[] alone = programme.leastRelaxation(rows).orElseThrow();
        assertEquals(4, Arrays.stream(alone).sum(), 1e-9);
        double[] together =
                programme.leastRelaxation(rows, new int[] {0, 1, 1, 2}).orElseThrow();
        assertArrayEquals(new double[] {0, 2, 0}, together, 1e-9);
    }

    /** Giving way without end at a gain has no optimum: that is no contradiction of the rows, and said. */
    @Test
    void failuresOfTheSolverAreNotTakenForContradictions() {
        Programme programme = Programme.linear(new double[] {100, 100}, new double[] {3, 2});
        List<Row> unbounded = List.of(new Row(new double[] {2, 1}, 12, -1));
        assertThrows(IllegalStateException.class, () -> programme.leastRelaxation(unbounded));
        List<Row> contradicting = List.of(row(-1, 1, 1));
        assertEquals(Optional.empty(), programme.solve(contradicting));
        assertThrows(IllegalStateException.class, () -> programme.prices(contradicting));
    }

    /** Held equal, the first two of Dantzig's variables are one: 3 x <= 12 and 3 x <= 7 leave x = 7/3 with the price 5/3. */
    @Test
    void tiesMakeOneVariableOfSeveral() {
        Programme programme = Programme.linear(new double[] {100, 80}, new double[] {-3, -2});
        Ties ties = new Ties(new int[] {0, 0}, 1);
        List<Row> rows = List.of(ties.of(row(12, 2, 1)), ties.of(row(7, 1, 2)));
        Optimum optimum = ties.free(ties.of(programme).solve(rows).orElseThrow());
        assertArrayEquals(new double[] {7.0 / 3, 7.0 / 3}, optimum.x(), 1e-9);
        assertArrayEquals(new double[] {0, 5.0 / 3}, ties.of(programme).prices(rows), 1e-9);
        assertEquals(80, ties.of(programme).most()[0]);
    }

    /** Of 300 variables that share 20 by their gains, those that gain most are at their bounds and one is between. */
    @Test
    void upperBoundsHoldForManyVariables() {
        int n = 300;
        double[] most = new double[n];
        double[] cost = new double[n];
        double[] ones = new double[n];
        Arrays.fill(most, 0.15);
        Arrays.setAll(cost, i -> -1 - 1e-3 * (i * 7 % n));
        Arrays.fill(ones, 1);
        Programme programme = Programme.linear(most, cost);
        Optimum optimum = programme.solve(List.of(row(20, ones))).orElseThrow();
        for (int i = 0; i < n; i++) {
            int rank = n - 1 - i * 7 % n;
            assertEquals(rank < 133 ? 0.15 : rank == 133 ? 0.05 : 0, optimum.x()[i], 1e-9);
        }
        assertEquals(1 + 1e-3 * (n - 1 - 133), programme.prices(List.of(row(20, ones)))[0], 1e-9);
    }

    /**
     * By hand: of 10 wanted, one unit of the first costs nothing up to 4 and then {@code t + t^2 / 2} for t more, the second costs 3 each. Slopes
     * are alike at t = 2. A unit more wanted costs 3, and a unit more of the first, held to 5, saves 3 less the slope there, 2.
     */
    @Test
    void excessesCostWhatIsAboveTheirBound() {
        Programme programme = new Programme(
                new double[] {20, 20},
                new double[] {0, 3},
                new double[0][],
                List.of(new Excess(new double[] {1, 0}, 4, 1, 1)));
        Row wanted = new Row(new double[] {-1, -1}, -10, Double.POSITIVE_INFINITY);
        Optimum best = programme.solve(List.of(wanted)).orElseThrow();
        assertArrayEquals(new double[] {6, 4}, best.x(), 1e-6);
        assertEquals(16, best.value(), 1e-6);
        assertEquals(16, programme.valueOf(best.x()), 1e-6);
        assertArrayEquals(new double[] {3}, programme.prices(List.of(wanted)), 1e-6);
        Row held = new Row(new double[] {1, 0}, 5, Double.POSITIVE_INFINITY);
        assertArrayEquals(
                new double[] {5, 5},
                programme.solve(List.of(wanted, held)).orElseThrow().x(),
                1e-6);
        assertArrayEquals(new double[] {3, 1}, programme.prices(List.of(wanted, held)), 1e-6);
        Ties together = new Ties(new int[] {0, 0}, 1);
        assertArrayEquals(
                new double[] {5},
                together.of(programme)
                        .solve(List.of(together.of(wanted)))
                        .orElseThrow()
                        .x(),
                1e-6);
        assertEquals(1.5 + 15, together.of(programme).valueOf(new double[] {5}), 1e-9);
    }

    @Test
    void anExcessNeedsOneCoefficientAVariable() {
        double[] two = {1, 1};
        List<Excess> ofThree = List.of(new Excess(new double[] {1, 0, 0}, 4, 1, 1));
        assertThrows(IllegalArgumentException.class, () -> new Programme(two, two, new double[0][], ofThree));
        assertThrows(IllegalArgumentException.class, () -> new Excess(two, 4, -1, 0));
        assertThrows(IllegalArgumentException.class, () -> new Excess(two, 4, 1, Double.NaN));
    }
}
