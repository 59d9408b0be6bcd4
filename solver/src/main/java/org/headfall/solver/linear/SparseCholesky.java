package org.headfall.solver.linear;

import org.ejml.data.DMatrixRMaj;
import org.ejml.data.DMatrixSparseCSC;
import org.ejml.data.DMatrixSparseTriplet;
import org.ejml.interfaces.linsol.LinearSolverSparse;
import org.ejml.ops.DConvertMatrixStruct;
import org.ejml.sparse.FillReducing;
import org.ejml.sparse.csc.factory.LinearSolverFactory_DSCC;

/** Cholesky factors of a small sparse matrix, by EJML; unknowns keep their order, so give them one with a narrow band. */
final class SparseCholesky {
    private final int size;
    private final DMatrixRMaj rightHandSide;
    private final DMatrixRMaj solution;
    private final LinearSolverSparse<DMatrixSparseCSC, DMatrixRMaj> solver =
            LinearSolverFactory_DSCC.cholesky(FillReducing.NONE);

    /**
     * Factors a matrix.
     *
     * @param entries the whole matrix, both triangles
     * @throws IllegalArgumentException if it is not positive definite
     */
    SparseCholesky(DMatrixSparseTriplet entries) {
        this.size = entries.numRows;
        this.rightHandSide = new DMatrixRMaj(size, 1);
        this.solution = new DMatrixRMaj(size, 1);
        DMatrixSparseCSC matrix = DConvertMatrixStruct.convert(entries, (DMatrixSparseCSC) null);
        if (!solver.setA(matrix)) {
            throw new IllegalArgumentException("matrix of " + size + " unknowns is not positive definite");
        }
    }

    /** Returns the array to fill with the right-hand side before {@link #solve}. */
    double[] rightHandSide() {
        return rightHandSide.data;
    }

    /** Solves and returns the array of the answer, valid until the next call. */
    double[] solve() {
        solver.solve(rightHandSide, solution);
        return solution.data;
    }
}
