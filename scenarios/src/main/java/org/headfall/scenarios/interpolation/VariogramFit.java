package org.headfall.scenarios.interpolation;

import java.util.Arrays;

/**
 * Fits an exponential variogram to values at points.
 *
 * <p>The sample variogram is the mean of half the squared differences of all pairs in twelve classes of distance up to
 * half the greatest (G. Matheron 1963, Principles of geostatistics, Economic Geology 58, 1246-1266). Range and sill make
 * the sum over classes of {@code pairs (sample / model - 1)^2} least: weighted least squares of N. Cressie (1985, Fitting
 * variogram models by weighted least squares, Mathematical Geology 17, 563-586). For a range the best sill is a quotient
 * of two sums, so that one number is left to search. The nugget is given, not fitted: the short distances that would tell
 * it are the ones that few pairs of bores have.
 */
final class VariogramFit {
    private static final int CLASSES = 12;
    private static final int LEAST_CLASSES = 3;
    private static final int STEPS = 40;
    private static final int REFINEMENTS = 6;
    /** The longest range that is tried, as a multiple of the greatest distance; beyond it the model is a straight line. */
    private static final double LONGEST_RANGE = 4;

    private final double nuggetShare;
    private final double[] distance = new double[CLASSES];
    private final double[] sample = new double[CLASSES];
    private final int[] pairs = new int[CLASSES];
    private final double greatestDistance;

    private VariogramFit(ScatteredValues points, double nuggetShare) {
        this.nuggetShare = nuggetShare;
        this.greatestDistance = greatestDistance(points);
        classify(points, greatestDistance / 2);
        if (filledClasses() < LEAST_CLASSES) {
            classify(points, greatestDistance);
        }
    }

    /**
     * The variogram of values that are not all equal.
     *
     * @param points at least two points
     * @param nuggetShare share of the nugget, kept
     */
    static ExponentialVariogram of(ScatteredValues points, double nuggetShare) {
        return new VariogramFit(points, nuggetShare).best();
    }

    /** The variogram with a given range and nugget, and the sill that fits best. */
    static ExponentialVariogram withRange(ScatteredValues points, double range, double nuggetShare) {
        return new VariogramFit(points, nuggetShare).withRange(range);
    }

    private static double greatestDistance(ScatteredValues points) {
        double greatest = 0;
        for (int i = 0; i < points.count(); i++) {
            for (int j = 0; j < i; j++) {
                greatest = Math.max(greatest, points.distance(i, j));
            }
        }
        return greatest;
    }

    private void classify(ScatteredValues points, double reach) {
        Arrays.fill(distance, 0);
        Arrays.fill(sample, 0);
        Arrays.fill(pairs, 0);
        for (int i = 0; i < points.count(); i++) {
            for (int j = 0; j < i; j++) {
                double length = points.distance(i, j);
                if (length <= reach) {
                    int k = Math.min(CLASSES - 1, (int) (CLASSES * length / reach));
                    double difference = points.value(i) - points.value(j);
                    distance[k] += length;
                    sample[k] += 0.5 * difference * difference;
                    pairs[k]++;
                }
            }
        }
        for (int k = 0; k < CLASSES; k++) {
            distance[k] /= Math.max(1, pairs[k]);
            sample[k] /= Math.max(1, pairs[k]);
        }
    }

    private int filledClasses() {
        int filled = 0;
        for (int k = 0; k < CLASSES; k++) {
            filled += pairs[k] > 0 && sample[k] > 0 ? 1 : 0;
        }
        return filled;
    }

    private ExponentialVariogram best() {
        double low = Math.log(shortestDistance());
        double high = Math.log(LONGEST_RANGE * greatestDistance);
        double best = low;
        for (int refinement = 0; refinement < REFINEMENTS; refinement++) {
            best = bestOfSteps(low, high);
            double step = (high - low) / STEPS;
            low = Math.max(low, best - step);
            high = Math.min(high, best + step);
        }
        return withRange(Math.exp(best));
    }

    private double shortestDistance() {
        for (int k = 0; k < CLASSES; k++) {
            if (pairs[k] > 0) {
                return distance[k];
            }
        }
        throw new IllegalStateException("points without a pair");
    }

    private double bestOfSteps(double low, double high) {
        double best = low;
        double least = Double.POSITIVE_INFINITY;
        for (int step = 0; step <= STEPS; step++) {
            double logarithm = low + (high - low) * step / STEPS;
            double misfit = misfit(Math.exp(logarithm));
            if (misfit < least) {
                least = misfit;
                best = logarithm;
            }
        }
        return best;
    }

    /** Sum over classes of {@code pairs (ratio / sill - 1)^2} for the best sill, ratio being sample over unit model. */
    private double misfit(double range) {
        double count = 0;
        double sum = 0;
        double squares = 0;
        ExponentialVariogram unit = new ExponentialVariogram(1, range, nuggetShare);
        for (int k = 0; k < CLASSES; k++) {
            if (pairs[k] > 0) {
                double ratio = sample[k] / unit.at(distance[k]);
                count += pairs[k];
                sum += pairs[k] * ratio;
                squares += pairs[k] * ratio * ratio;
            }
        }
        return squares > 0 ? count - sum * sum / squares : Double.POSITIVE_INFINITY;
    }

    private ExponentialVariogram withRange(double range) {
        double sum = 0;
        double squares = 0;
        ExponentialVariogram unit = new ExponentialVariogram(1, range, nuggetShare);
        for (int k = 0; k < CLASSES; k++) {
            if (pairs[k] > 0) {
                double ratio = sample[k] / unit.at(distance[k]);
                sum += pairs[k] * ratio;
                squares += pairs[k] * ratio * ratio;
            }
        }
        return new ExponentialVariogram(squares / sum, range, nuggetShare);
    }
}
