package org.headfall.solver.response;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.decomposition.LUDecomposition;
import org.ejml.interfaces.linsol.LinearSolverDense;

/**
 * Points that follow head along straight lines: {@code (chord + K) x = right}, with K the drawdown at the wall of each by a
 * further unit discharge of each in the step last looked at.
 */
final class ChordSystem {

    private ChordSystem() {}

    /**
     * Solver of the system.
     *
     * @param superposition a superposition that has looked at the step
     * @param following the points
     * @param chords fall of head at the wall of each that takes a unit from its discharge (d/m²)
     * @param anew whether further discharges hold throughout the step, or grow evenly from none
     * @return the solver, which holds the matrix
     * @throws EffectsAlikeException if the matrix is singular
     */
    static LinearSolverDense<DMatrixRMaj> solver(
            Superposition superposition, int[] following, double[] chords, boolean anew) {
        int n = following.length;
        DMatrixRMaj matrix = new DMatrixRMaj(n, n);
        double[] onsets = new double[n];
        for (int i = 0; i < n; i++) {
            superposition.onsets(following[i], following, n, anew, onsets);
            for (int j = 0; j < n; j++) {
                matrix.set(i, j, onsets[j]);
            }
            matrix.add(i, i, chords[i]);
        }
        LinearSolverDense<DMatrixRMaj> solver = LinearSolverFactory_DDRM.lu(n);
        // A singular matrix is decomposed all the same; its quality, a product over all rows, vanishes for many sound
        // ones.
        if (!solver.setA(matrix)
                || solver.<LUDecomposition<DMatrixRMaj>>getDecomposition().isSingular()) {
            throw new EffectsAlikeException(n);
        }
        return solver;
    }
}
