package org.headfall.solver.response;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;

/**
 * A smooth surface through values at scattered places: a constant and one cone a place ({@code r} as radial basis
 * function, Hardy 1971, J. Geophys. Res. 76, 1905-1915, without the offset), whose weights add up to zero.
 */
final class SmoothCorrection {

    private final double[] x;
    private final double[] y;
    private final double[] weights;
    private final double[] leftOut;

    /**
     * Surface through values.
     *
     * @param x eastings (m), no two places the same, at least one place
     * @param y northings (m)
     * @param values the values
     */
    SmoothCorrection(double[] x, double[] y, double[] values) {
        this.x = x;
        this.y = y;
        int n = values.length;
        DMatrixRMaj matrix = new DMatrixRMaj(n + 1, n + 1);
        DMatrixRMaj right = new DMatrixRMaj(n + 1, 1);
        for (int i = 0; i < n; i++) {
            matrix.set(i, n, 1);
            matrix.set(n, i, 1);
            right.set(i, values[i]);
            for (int j = 0; j < n; j++) {
                matrix.set(i, j, Math.hypot(x[i] - x[j], y[i] - y[j]));
            }
        }
        DMatrixRMaj inverse = new DMatrixRMaj(n + 1, n + 1);
        if (!CommonOps_DDRM.invert(matrix, inverse)) {
            throw new IllegalArgumentException("two of " + n + " places are the same");
        }
        DMatrixRMaj solution = new DMatrixRMaj(n + 1, 1);
        CommonOps_DDRM.mult(inverse, right, solution);
        weights = solution.getData();
        leftOut = new double[n];
        for (int i = 0; i < n; i++) {
            leftOut[i] = n == 1 ? 0 : weights[i] / inverse.get(i, i);
        }
    }

    /** Value of the surface. */
    double at(double easting, double northing) {
        double sum = weights[x.length];
        for (int i = 0; i < x.length; i++) {
            double dx = easting - x[i];
            double dy = northing - y[i];
            sum += weights[i] * Math.sqrt(dx * dx + dy * dy);
        }
        return sum;
    }

    /**
     * Value at each place less that of the surface through all others (Rippa 1999, Adv. Comput. Math. 11, 193-210): an
     * estimate of the error in between.
     */
    double[] leftOut() {
        return leftOut;
    }
}
