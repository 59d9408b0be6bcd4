package org.headfall.scenarios.interpolation;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;
import org.headfall.solver.wording.PlainNumber;

/**
 * Ordinary kriging from all points: the linear mean of least variance whose weights add up to one (J.-P. Chilès and
 * P. Delfiner 2012, Geostatistics, 2nd edition, section 3.4).
 *
 * <p>In its dual form the estimate is {@code m + sum b_i C(h_i)} with the covariance C at the distances to the points,
 * where {@code K b = z - m} and {@code sum b_i = 0}. So the matrix K of covariances between the points is solved once, and
 * a cell costs one exponential a point. A nugget counts as scatter of measurement: it is added to the diagonal of K only,
 * and the surface passes by the values. Without it the surface goes through them.
 */
final class OrdinaryKriging implements Surface {
    private final double[] pointsX;
    private final double[] pointsY;
    private final double decay;
    private final double mean;
    private final double[] factors;

    /**
     * The surface.
     *
     * @throws IllegalArgumentException if points stand so close together that the system cannot be solved
     */
    OrdinaryKriging(ScatteredValues points, ExponentialVariogram variogram) {
        this.decay = 3 / variogram.range();
        int count = points.count();
        DMatrixRMaj solution = solve(points, variogram);
        double values = 0;
        double ones = 0;
        for (int i = 0; i < count; i++) {
            values += solution.get(i, 0);
            ones += solution.get(i, 1);
        }
        mean = values / ones;
        factors = new double[count];
        pointsX = new double[count];
        pointsY = new double[count];
        for (int i = 0; i < count; i++) {
            pointsX[i] = points.x(i);
            pointsY[i] = points.y(i);
            factors[i] = (solution.get(i, 0) - mean * solution.get(i, 1)) * (1 - variogram.nuggetShare());
        }
    }

    /** Solves {@code K [a, w] = [z, 1]}, K being divided by the sill. */
    private static DMatrixRMaj solve(ScatteredValues points, ExponentialVariogram variogram) {
        int count = points.count();
        DMatrixRMaj matrix = new DMatrixRMaj(count, count);
        DMatrixRMaj right = new DMatrixRMaj(count, 2);
        for (int i = 0; i < count; i++) {
            for (int j = 0; j < i; j++) {
                double correlation = variogram.correlation(points.distance(i, j));
                matrix.set(i, j, correlation);
                matrix.set(j, i, correlation);
            }
            matrix.set(i, i, 1);
            right.set(i, 0, points.value(i));
            right.set(i, 1, 1);
        }
        LinearSolverDense<DMatrixRMaj> solver = LinearSolverFactory_DDRM.symmPosDef(count);
        DMatrixRMaj solution = new DMatrixRMaj(count, 2);
        if (!solver.setA(matrix)) {
            throw new IllegalArgumentException("points stand too close together for kriging with a range of "
                    + PlainNumber.of(variogram.range()) + " m and no nugget");
        }
        solver.solve(right, solution);
        return solution;
    }

    @Override
    public double at(double x, double y) {
        double sum = mean;
        for (int i = 0; i < factors.length; i++) {
            double dx = x - pointsX[i];
            double dy = y - pointsY[i];
            sum += factors[i] * Math.exp(-decay * Math.sqrt(dx * dx + dy * dy));
        }
        return sum;
    }
}
