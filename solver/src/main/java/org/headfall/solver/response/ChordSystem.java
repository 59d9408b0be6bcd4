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

    /**
     * Has points give so much more that {@code (chord + K) x} is what is missing.
     *
     * @param superposition a superposition that has looked at the step; is told what they give
     * @param following the points
     * @param chords fall of head at the wall of each that takes a unit from its discharge (d/m²)
     * @param missing what is missing at each (m)
     * @param anew whether further discharges hold throughout the step, or grow evenly from none
     * @param discharge discharge of each cause, of which that of the points grows
     */
    static void take(
            Superposition superposition,
            int[] following,
            double[] chords,
            double[] missing,
            boolean anew,
            double[] discharge) {
        DMatrixRMaj right = new DMatrixRMaj(following.length, 1, true, missing);
        DMatrixRMaj further = new DMatrixRMaj(following.length, 1);
        solver(superposition, following, chords, anew).solve(right, further);
        for (int k = 0; k < following.length; k++) {
            superposition.addToLook(following[k], further.get(k), anew);
            discharge[following[k]] += further.get(k);
        }
    }
}
