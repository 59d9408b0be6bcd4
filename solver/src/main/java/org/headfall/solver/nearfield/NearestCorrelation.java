package org.headfall.solver.nearfield;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.EigenDecomposition_F64;

/**
 * The positive definite matrix with a diagonal of ones that is nearest to a symmetric one in the Frobenius norm, by
 * alternating projections with Dykstra's correction: Higham, N. J. (2002), Computing the nearest correlation matrix, IMA
 * Journal of Numerical Analysis 22, 329-343, algorithm 3.3. Departing from it, eigenvalues are held above a small number
 * rather than zero, and what is left of the diagonal at the end is scaled away, so that the answer is definite wherever
 * the projections stop.
 */
final class NearestCorrelation {

    private static final double SMALLEST_EIGENVALUE = 1e-3;
    private static final double SETTLED = 1e-9;
    private static final int MOST_PROJECTIONS = 500;

    private NearestCorrelation() {}

    /**
     * The nearest matrix.
     *
     * @param symmetric a symmetric matrix with ones on its diagonal, not modified
     * @return the nearest one with eigenvalues above zero, and ones on its diagonal
     */
    static DMatrixRMaj to(DMatrixRMaj symmetric) {
        int n = symmetric.getNumRows();
        DMatrixRMaj nearest = symmetric.copy();
        DMatrixRMaj correction = new DMatrixRMaj(n, n);
        DMatrixRMaj corrected = new DMatrixRMaj(n, n);
        DMatrixRMaj definite = symmetric;
        double moved = Double.POSITIVE_INFINITY;
        for (int k = 0; k < MOST_PROJECTIONS && moved > SETTLED; k++) {
            CommonOps_DDRM.subtract(nearest, correction, corrected);
            definite = withEigenvaluesRaised(corrected);
            CommonOps_DDRM.subtract(definite, corrected, correction);
            moved = 0;
            for (int i = 0; i < n; i++) {
                moved = Math.max(moved, Math.abs(definite.get(i, i) - 1));
            }
            nearest.setTo(definite);
            for (int i = 0; i < n; i++) {
                nearest.set(i, i, 1);
            }
        }
        return scaledToOnes(definite);
    }

    /** The nearest matrix whose eigenvalues are not too small, whatever its diagonal. */
    private static DMatrixRMaj withEigenvaluesRaised(DMatrixRMaj symmetric) {
        int n = symmetric.getNumRows();
        EigenDecomposition_F64<DMatrixRMaj> eigen = DecompositionFactory_DDRM.eig(n, true, true);
        if (!eigen.decompose(symmetric.copy())) {
            throw new ArithmeticException("the eigenvalues of " + n + " bores' drawdown were not found");
        }
        DMatrixRMaj sum = new DMatrixRMaj(n, n);
        for (int k = 0; k < n; k++) {
            DMatrixRMaj vector = eigen.getEigenVector(k);
            double value = Math.max(SMALLEST_EIGENVALUE, eigen.getEigenvalue(k).getReal());
            CommonOps_DDRM.multAddTransB(value, vector, vector, sum);
        }
        return sum;
    }

    private static DMatrixRMaj scaledToOnes(DMatrixRMaj definite) {
        int n = definite.getNumRows();
        DMatrixRMaj scaled = new DMatrixRMaj(n, n);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < i; j++) {
                double value = definite.get(i, j) / Math.sqrt(definite.get(i, i) * definite.get(j, j));
                scaled.set(i, j, value);
                scaled.set(j, i, value);
            }
            scaled.set(i, i, 1);
        }
        return scaled;
    }
}
