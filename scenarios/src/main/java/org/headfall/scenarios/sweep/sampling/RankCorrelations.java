package org.headfall.scenarios.sweep.sampling;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.NonPositiveDefiniteMatrixException;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * Makes the coordinates of points depend on each other without changing the values that each coordinate takes: they are
 * put into the order of correlated normal scores (after Iman and Conover 1982, Communications in Statistics B 11,
 * 311-334). The normal scores' correlation is {@code 2 sin(pi r / 6)} of the wanted rank correlation r, which is exact for
 * normal pairs (Pearson 1907).
 */
public final class RankCorrelations {

    private final double[][] lower;

    /**
     * Correlations between the axes.
     *
     * @param rank wanted rank correlation (Spearman) of each pair of axes; symmetric, ones on the diagonal
     * @throws IllegalArgumentException if no numbers can be correlated like that
     */
    public RankCorrelations(double[][] rank) {
        RealMatrix normal = MatrixUtils.createRealMatrix(rank.length, rank.length);
        for (int i = 0; i < rank.length; i++) {
            for (int j = 0; j < rank.length; j++) {
                normal.setEntry(i, j, i == j ? 1 : 2 * Math.sin(Math.PI * rank[i][j] / 6));
            }
        }
        try {
            lower = new CholeskyDecomposition(normal).getL().getData();
        } catch (NonPositiveDefiniteMatrixException impossible) {
            throw new IllegalArgumentException("no numbers can be correlated like that", impossible);
        }
    }

    /**
     * The same coordinates in another order.
     *
     * @param points coordinates by point and axis, independent of each other; reordered in place
     */
    public void impose(double[][] points) {
        double[][] scores = new double[lower.length][points.length];
        for (int k = 0; k < points.length; k++) {
            double[] independent = Arrays.stream(points[k])
                    .map(Distribution.STANDARD_NORMAL::inverseCumulativeProbability)
                    .toArray();
            for (int axis = 0; axis < lower.length; axis++) {
                for (int other = 0; other <= axis; other++) {
                    scores[axis][k] += lower[axis][other] * independent[other];
                }
            }
        }
        for (int axis = 0; axis < lower.length; axis++) {
            reorder(points, axis, scores[axis]);
        }
    }

    private static void reorder(double[][] points, int axis, double[] score) {
        double[] values =
                Arrays.stream(points).mapToDouble(point -> point[axis]).sorted().toArray();
        int[] order = IntStream.range(0, points.length)
                .boxed()
                .sorted(Comparator.comparingDouble(k -> score[k]))
                .mapToInt(Integer::intValue)
                .toArray();
        for (int k = 0; k < order.length; k++) {
            points[order[k]][axis] = values[k];
        }
    }
}
