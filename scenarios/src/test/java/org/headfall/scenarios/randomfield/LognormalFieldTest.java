package org.headfall.scenarios.randomfield;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;
import org.headfall.scenarios.raster.Raster;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Statistics of many fields against the model they are drawn from; bounds are of sampling, four standard errors. */
class LognormalFieldTest {

    private static final int FIELDS = 400;
    private static final double STANDARD_ERRORS = 4;
    private static final Lattice SQUARE = new Lattice(0, 0, 100, 100, 24, 20);

    private static LognormalField field(CorrelationModel model, KnownValue... known) {
        return new LognormalField(250, new Covariance(model, 0.49, 1000, 1, 0), List.of(known));
    }

    private static double[] logs(FieldSource source, int number) {
        return Arrays.stream(source.draw(2026, number).values()).map(Math::log).toArray();
    }

    /** One cell of each field, so that samples are independent: mean, and variance by its chi-squared distribution. */
    @ParameterizedTest
    @EnumSource(CorrelationModel.class)
    void hasTheMeanAndVarianceOfTheModel(CorrelationModel model) {
        SummaryStatistics logs = new SummaryStatistics();
        FieldSource source = field(model).on(SQUARE);
        for (int number = 1; number <= FIELDS; number++) {
            logs.addValue(logs(source, number)[137]);
        }
        assertEquals(Math.log(250), logs.getMean(), STANDARD_ERRORS * 0.7 / Math.sqrt(FIELDS));
        double chiSquared = (FIELDS - 1) * logs.getVariance() / 0.49;
        double tail = new ChiSquaredDistribution(FIELDS - 1).cumulativeProbability(chiSquared);
        assertTrue(tail > 3e-5 && tail < 1 - 3e-5, "variance " + logs.getVariance());
    }

    /**
     * Half the mean squared difference of two cells against the variogram of the model. Differences are normal, so that
     * the half squared differences scatter by sqrt(2) of their mean.
     */
    @ParameterizedTest
    @EnumSource(CorrelationModel.class)
    void hasTheVariogramOfTheModel(CorrelationModel model) {
        int[][] steps = {{1, 0}, {3, 0}, {0, 5}, {6, 8}, {15, 0}};
        SummaryStatistics[] half = statistics(steps.length);
        FieldSource source = field(model).on(SQUARE);
        for (int number = 1; number <= FIELDS; number++) {
            double[] logs = logs(source, number);
            for (int k = 0; k < steps.length; k++) {
                half[k].addValue(halfSquare(logs[0], logs[steps[k][1] * 24 + steps[k][0]]));
            }
        }
        for (int k = 0; k < steps.length; k++) {
            double h = Math.hypot(steps[k][0], steps[k][1]) / 10;
            // Chilès and Delfiner 2012, Geostatistics, 2nd edition, section 2.5.1, with the practical range (from
            // memory)
            double share = switch (model) {
                case EXPONENTIAL -> 1 - Math.exp(-3 * h);
                case SPHERICAL -> h < 1 ? 1.5 * h - 0.5 * Math.pow(h, 3) : 1;
                case GAUSSIAN -> 1 - Math.exp(-3 * h * h);
            };
            double bound = STANDARD_ERRORS * Math.sqrt(2.0 / FIELDS);
            assertEquals(1, half[k].getMean() / (0.49 * share), bound, "distance " + h);
        }
    }

    private static SummaryStatistics[] statistics(int count) {
        return IntStream.range(0, count).mapToObj(k -> new SummaryStatistics()).toArray(SummaryStatistics[]::new);
    }

    private static double halfSquare(double a, double b) {
        return 0.5 * (a - b) * (a - b);
    }

    /** Longest range to the north-east, 45 degrees from north, four times that across. */
    @Test
    void isMoreAlikeAlongTheLongestRange() {
        FieldSource source = new LognormalField(
                        250, new Covariance(CorrelationModel.EXPONENTIAL, 1, 1200, 4, 45), List.of())
                .on(SQUARE);
        SummaryStatistics[] half = statistics(2);
        for (int number = 1; number <= FIELDS; number++) {
            double[] logs = logs(source, number);
            half[0].addValue(halfSquare(logs[5 * 24 + 5], logs[8 * 24 + 8]));
            half[1].addValue(halfSquare(logs[5 * 24 + 8], logs[8 * 24 + 5]));
        }
        double distance = 300 * Math.sqrt(2);
        double bound = STANDARD_ERRORS * Math.sqrt(2.0 / FIELDS);
        assertEquals(1, half[0].getMean() / (1 - Math.exp(-3 * distance / 1200)), bound);
        assertEquals(1, half[1].getMean() / (1 - Math.exp(-3 * distance / 300)), bound);
    }

    @ParameterizedTest
    @EnumSource(CorrelationModel.class)
    void keepsKnownValuesToRounding(CorrelationModel model) {
        KnownValue[] known = {
            new KnownValue(350, 450, 80), new KnownValue(1820, 330, 900), new KnownValue(1130, 1770, 250)
        };
        for (int number = 1; number <= 5; number++) {
            Raster raster = field(model, known).on(SQUARE).draw(7, number);
            for (KnownValue value : known) {
                double kept = raster.value((int) (value.x() / 100), (int) (value.y() / 100));
                assertEquals(1, kept / value.value(), 1e-12);
            }
        }
    }

    /** Of two values in one cell the geometric mean; a value beyond the area bends the field within it. */
    @Test
    void keepsValuesThatShareACellAndThoseBesideTheArea() {
        KnownValue[] known = {
            new KnownValue(350, 450, 100), new KnownValue(360, 460, 400), new KnownValue(-130, 450, 3000)
        };
        Raster raster = field(CorrelationModel.EXPONENTIAL, known).on(SQUARE).draw(7, 1);
        assertEquals(26, raster.columns());
        assertEquals(-200, raster.extent().west());
        assertEquals(200, raster.value(5, 4), 1e-9);
        assertEquals(3000, raster.value(0, 4), 1e-8);
    }

    /**
     * Mean and variance beside known values are those of simple kriging (Chilès and Delfiner 2012, equations 3.1 and
     * 3.2), solved here by Commons Math.
     */
    @Test
    void hasTheConditionalMeanAndVarianceBetweenKnownValues() {
        KnownValue[] known = {new KnownValue(450, 950, 60), new KnownValue(850, 950, 700)};
        SummaryStatistics logs = new SummaryStatistics();
        FieldSource source = field(CorrelationModel.EXPONENTIAL, known).on(SQUARE);
        for (int number = 1; number <= FIELDS; number++) {
            logs.addValue(logs(source, number)[9 * 24 + 5]);
        }
        double c1 = 0.49 * Math.exp(-0.3);
        double c3 = 0.49 * Math.exp(-0.9);
        double c4 = 0.49 * Math.exp(-1.2);
        RealMatrix between = new Array2DRowRealMatrix(new double[][] {{0.49, c4}, {c4, 0.49}});
        RealMatrix to = new Array2DRowRealMatrix(new double[] {c1, c3});
        RealMatrix weights = new LUDecomposition(between).getSolver().solve(to);
        double mean = Math.log(250)
                + weights.getEntry(0, 0) * Math.log(60 / 250.0)
                + weights.getEntry(1, 0) * Math.log(700 / 250.0);
        double variance = 0.49 - weights.transpose().multiply(to).getEntry(0, 0);
        assertEquals(mean, logs.getMean(), STANDARD_ERRORS * Math.sqrt(variance / FIELDS));
        assertEquals(1, logs.getVariance() / variance, STANDARD_ERRORS * Math.sqrt(2.0 / FIELDS));
    }

    @Test
    void followsFromSeedAndNumberAlone() {
        FieldSource field =
                field(CorrelationModel.SPHERICAL, new KnownValue(350, 450, 80)).on(SQUARE);
        double[] first = field.draw(2026, 3).values();
        List<double[]> parallel = IntStream.range(0, 4)
                .parallel()
                .mapToObj(k -> field.draw(2026, 3).values())
                .toList();
        parallel.forEach(again -> assertArrayEquals(first, again));
        assertFalse(Arrays.equals(first, field.draw(2026, 4).values()));
        assertFalse(Arrays.equals(first, field.draw(2027, 3).values()));
    }

    /** Fields of neighbouring numbers must not be alike: their correlation over all cells is that of chance. */
    @Test
    void drawsIndependentFieldsForNeighbouringNumbers() {
        Lattice wide = new Lattice(0, 0, 1000, 1000, 64, 64);
        FieldSource source = field(CorrelationModel.SPHERICAL).on(wide);
        double sum = 0;
        for (int number = 1; number <= 20; number++) {
            double[] one = logs(source, number);
            double[] other = logs(source, number + 1);
            for (int cell = 0; cell < one.length; cell++) {
                sum += (one[cell] - Math.log(250)) * (other[cell] - Math.log(250)) / 0.49;
            }
        }
        // Cells are as far apart as the range, so that all are independent.
        double pairs = 20.0 * wide.count();
        assertEquals(0, sum / pairs, STANDARD_ERRORS / Math.sqrt(pairs));
    }

    /** A range three times the area: the torus grows, and variogram and variance stay those of the model. */
    @Test
    void reachesFarBeyondTheArea() {
        Lattice small = new Lattice(0, 0, 100, 100, 16, 16);
        FieldSource source = new LognormalField(
                        250, new Covariance(CorrelationModel.EXPONENTIAL, 1, 4800, 1, 0), List.of())
                .on(small);
        SummaryStatistics half = new SummaryStatistics();
        for (int number = 1; number <= FIELDS; number++) {
            double[] logs = logs(source, number);
            half.addValue(halfSquare(logs[0], logs[15]));
        }
        double expected = 1 - Math.exp(-3 * 1500.0 / 4800);
        assertEquals(1, half.getMean() / expected, STANDARD_ERRORS * Math.sqrt(2.0 / FIELDS));
    }

    @Test
    void refusesWhatCannotBe() {
        LognormalField wide = new LognormalField(
                250,
                new Covariance(CorrelationModel.EXPONENTIAL, 1, 2e6, 1, 0),
                List.of(new KnownValue(1_500_000, 900_000, 100)));
        IllegalArgumentException tooLong = assertThrows(IllegalArgumentException.class, () -> wide.on(SQUARE));
        assertTrue(String.valueOf(tooLong.getMessage()).contains("a range of 2000000 m"), tooLong.getMessage());
        LognormalField smooth = new LognormalField(
                250,
                new Covariance(CorrelationModel.GAUSSIAN, 1, 5000, 1, 0),
                IntStream.range(0, 12)
                        .mapToObj(k -> new KnownValue(50 + 100 * k, 50, k % 2 == 0 ? 100 : 400))
                        .toList());
        IllegalArgumentException tooClose = assertThrows(
                IllegalArgumentException.class, () -> smooth.on(SQUARE).draw(1, 1));
        assertTrue(String.valueOf(tooClose.getMessage()).contains("so close together"), tooClose.getMessage());
    }
}
