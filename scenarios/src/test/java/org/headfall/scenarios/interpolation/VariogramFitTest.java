package org.headfall.scenarios.interpolation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.CholeskyDecomposition_F64;
import org.junit.jupiter.api.Test;

class VariogramFitTest {
    /** Points of a Gaussian random field with sill 0.8 and range 30 km, on 100 km by 100 km. */
    private static ScatteredValues field(long seed, int count, double nuggetShare) {
        Random random = new Random(seed);
        double[] x = new double[count];
        double[] y = new double[count];
        DMatrixRMaj covariance = new DMatrixRMaj(count, count);
        ExponentialVariogram variogram = new ExponentialVariogram(0.8, 30_000, nuggetShare);
        for (int i = 0; i < count; i++) {
            x[i] = 1e5 * random.nextDouble();
            y[i] = 1e5 * random.nextDouble();
            for (int j = 0; j <= i; j++) {
                double value = 0.8 - variogram.at(Math.hypot(x[i] - x[j], y[i] - y[j]));
                covariance.set(i, j, value);
                covariance.set(j, i, value);
            }
        }
        CholeskyDecomposition_F64<DMatrixRMaj> cholesky = DecompositionFactory_DDRM.chol(count, true);
        assertTrue(cholesky.decompose(covariance));
        DMatrixRMaj root = cholesky.getT(null);
        double[] normal = new double[count];
        for (int i = 0; i < count; i++) {
            normal[i] = random.nextGaussian();
        }
        double[] values = new double[count];
        for (int i = 0; i < count; i++) {
            for (int j = 0; j <= i; j++) {
                values[i] += root.get(i, j) * normal[j];
            }
        }
        return new ScatteredValues(x, y, values);
    }

    /** Single fields scatter; over many the middle of the fitted ranges and sills is the true one. */
    @Test
    void findsTheRangeAndSillOfRandomFieldsInTheMean() {
        double logRange = 0;
        double logSill = 0;
        int fields = 60;
        for (long seed = 0; seed < fields; seed++) {
            ExponentialVariogram fitted = VariogramFit.of(field(seed, 120, 0), 0);
            logRange += Math.log(fitted.range()) / fields;
            logSill += Math.log(fitted.sill()) / fields;
        }
        assertEquals(30_000, Math.exp(logRange), 6_000, "seeds 0 to " + (fields - 1));
        assertEquals(0.8, Math.exp(logSill), 0.16, "seeds 0 to " + (fields - 1));
    }

    @Test
    void findsTheRangeBesideAGivenNugget() {
        double logRange = 0;
        int fields = 60;
        for (long seed = 0; seed < fields; seed++) {
            logRange += Math.log(VariogramFit.of(field(seed, 120, 0.3), 0.3).range()) / fields;
        }
        assertEquals(30_000, Math.exp(logRange), 9_000, "seeds 0 to " + (fields - 1));
    }

    /** The search must not stop at a worse range than any of a fine scan from the shortest range that it may try. */
    @Test
    void noOtherRangeFitsBetter() {
        for (long seed = 0; seed < 10; seed++) {
            ScatteredValues points = field(seed, 40, 0);
            double best = VariogramFit.of(points, 0).range();
            double least = Double.POSITIVE_INFINITY;
            double at = 0;
            for (double range = Math.max(best / 3, shortest(points)); range < best * 3; range *= 1.003) {
                double misfit = misfit(points, VariogramFit.withRange(points, range, 0));
                if (misfit < least) {
                    least = misfit;
                    at = range;
                }
            }
            double found = misfit(points, VariogramFit.withRange(points, best, 0));
            assertTrue(found <= least * (1 + 1e-6), "seed " + seed + ": " + best + " m fits worse than " + at + " m");
        }
    }

    /** Mean distance of the pairs in the first class. */
    private static double shortest(ScatteredValues points) {
        double greatest = 0;
        for (int i = 0; i < points.count(); i++) {
            for (int j = 0; j < i; j++) {
                greatest = Math.max(greatest, points.distance(i, j));
            }
        }
        double sum = 0;
        int pairs = 0;
        for (int i = 0; i < points.count(); i++) {
            for (int j = 0; j < i; j++) {
                if (points.distance(i, j) < greatest / 24) {
                    sum += points.distance(i, j);
                    pairs++;
                }
            }
        }
        assertTrue(pairs > 0);
        return sum / pairs;
    }

    /** The sum the fit makes least, written out from the pairs. */
    private static double misfit(ScatteredValues points, ExponentialVariogram variogram) {
        double greatest = 0;
        for (int i = 0; i < points.count(); i++) {
            for (int j = 0; j < i; j++) {
                greatest = Math.max(greatest, points.distance(i, j));
            }
        }
        double misfit = 0;
        for (int k = 0; k < 12; k++) {
            double from = greatest / 2 * k / 12;
            double to = greatest / 2 * (k + 1) / 12;
            double pairs = 0;
            double distance = 0;
            double sample = 0;
            for (int i = 0; i < points.count(); i++) {
                for (int j = 0; j < i; j++) {
                    double h = points.distance(i, j);
                    if (h >= from && h < to) {
                        pairs++;
                        distance += h;
                        sample += Math.pow(points.value(i) - points.value(j), 2) / 2;
                    }
                }
            }
            if (pairs > 0) {
                misfit += pairs * Math.pow(sample / pairs / variogram.at(distance / pairs) - 1, 2);
            }
        }
        return misfit;
    }

    @Test
    void threePointsAreEnough() {
        ScatteredValues points =
                new ScatteredValues(new double[] {0, 1000, 5000}, new double[] {0, 0, 0}, new double[] {1, 2, 3});
        ExponentialVariogram fitted = VariogramFit.of(points, 0);
        assertTrue(fitted.range() >= 1000 && fitted.range() <= 20_000, fitted.toString());
        assertTrue(fitted.sill() > 0, fitted.toString());
    }

    @Test
    void risesFromTheNuggetTo95PercentAtTheRange() {
        ExponentialVariogram variogram = new ExponentialVariogram(2, 500, 0.25);
        assertEquals(0, variogram.at(0));
        assertEquals(0.5, variogram.at(1e-9), 1e-9);
        assertEquals(0.5 + 1.5 * 0.950213, variogram.at(500), 1e-6);
        assertEquals(2, variogram.at(1e6), 1e-12);
    }
}
