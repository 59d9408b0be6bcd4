package org.headfall.solver.response;

import java.util.Arrays;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.EigenDecomposition_F64;
import org.headfall.solver.flow.SourceFields;
import org.headfall.solver.flow.TransferValues;

/**
 * A small model of the fields of several sources at once: the Galerkin projection on the solutions of all of them at all
 * shifts and an even fall of all heads (a block rational Krylov space; Ruhe 1984, Linear Algebra and its Applications 58,
 * 391-405, for rational Krylov spaces, cited from memory). What one source does far away is made up of what
 * the others do there as well, so that it errs a few times less than a model of that source alone from solutions at the
 * same shifts, and its weights hardly cancel. With an even fall in its space, what it leaves of the equation is none in the sum
 * over all cells: water balances close.
 *
 * <p>Its orthonormal basis begins with the even fall and goes on with solutions in the order of {@link PivotedCholesky}, until
 * all others are foretold to what the linear solver leaves. The first vectors of the basis make a poorer model of the same kind, and
 * from the difference of both the error is told.
 */
final class JointModel {

    private final int[] sources;
    private final int shifts;
    private final PivotedCholesky choice;

    /** What each vector of the basis, a row, holds of an even fall by one metre and of each chosen solution. */
    private final DMatrixRMaj basis;

    private final DMatrixRMaj stiffness;

    /** How strongly each source, a column, drives each vector. */
    private final DMatrixRMaj driven;

    /**
     * Model of some sources.
     *
     * @param transfer transfer functions among all places
     * @param fields what the solutions mean for the water balance
     * @param sources numbers of the sources
     * @param places their places in the transfer functions
     * @param smallest part of its square that the others may leave of a solution without it being taken into the basis
     */
    JointModel(TransferValues transfer, SourceFields fields, int[] sources, int[] places, double smallest) {
        this.sources = sources;
        shifts = transfer.shifts().length;
        JointProducts products = new JointProducts(transfer, fields, sources, places);
        choice = new PivotedCholesky(products.mass(), smallest);
        DMatrixRMaj orthonormal = choice.orthonormal();
        int vectors = orthonormal.numRows + 1;
        basis = new DMatrixRMaj(vectors, vectors);
        stiffness = new DMatrixRMaj(vectors, vectors);
        driven = new DMatrixRMaj(vectors, sources.length);
        CommonOps_DDRM.insert(projected(products, orthonormal), stiffness, 1, 1);
        stiffness.set(0, 0, products.evenStiffness());
        basis.set(0, 0, 1 / products.evenNorm());
        for (int source = 0; source < sources.length; source++) {
            driven.set(0, source, fields.sumOfShares(sources[source]) / products.evenNorm());
        }
        for (int vector = 1; vector < vectors; vector++) {
            addVector(vector, products, orthonormal);
        }
    }

    private DMatrixRMaj projected(JointProducts products, DMatrixRMaj orthonormal) {
        int size = orthonormal.numRows;
        int[] chosen = choice.chosen();
        DMatrixRMaj ofChosen = new DMatrixRMaj(size, size);
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size; j++) {
                ofChosen.set(i, j, products.stiffness(chosen[i], chosen[j]));
            }
        }
        DMatrixRMaj half = new DMatrixRMaj(size, size);
        DMatrixRMaj projected = new DMatrixRMaj(size, size);
        CommonOps_DDRM.mult(orthonormal, ofChosen, half);
        CommonOps_DDRM.multTransB(half, orthonormal, projected);
        return projected;
    }

    private void addVector(int vector, JointProducts products, DMatrixRMaj orthonormal) {
        double toEven = 0;
        double even = 0;
        for (int k = 0; k < vector; k++) {
            double part = orthonormal.get(vector - 1, k);
            int solution = choice.chosen()[k];
            basis.set(vector, k + 1, part / products.norm(solution));
            toEven += part * products.stiffnessToEven(solution);
            even -= part * products.evenPart(solution);
            for (int source = 0; source < sources.length; source++) {
                driven.add(vector, source, part * products.driven(solution, source));
            }
        }
        basis.set(vector, 0, even / products.evenNorm());
        stiffness.set(0, vector, toEven);
        stiffness.set(vector, 0, toEven);
        for (int source = 0; source < sources.length; source++) {
            driven.add(vector, source, even * driven.get(0, source));
        }
    }

    /**
     * Modes of the model, or of a poorer one.
     *
     * @param smallest part of its square that those chosen before may leave of a solution without it being taken
     * @return its modes, at rest
     * @throws IllegalStateException if eigenvalues are not found
     */
    JointModes modes(double smallest) {
        int vectors = 1 + choice.countAbove(smallest);
        EigenDecomposition_F64<DMatrixRMaj> eigen = DecompositionFactory_DDRM.eig(vectors, true, true);
        if (!eigen.decompose(leading(stiffness, vectors, vectors))) {
            throw new IllegalStateException("eigenvalues of a reduced model were not found");
        }
        double[] decay = new double[vectors];
        DMatrixRMaj modes = new DMatrixRMaj(vectors, vectors);
        for (int mode = 0; mode < vectors; mode++) {
            // None is negative but by rounding, where its weight is rounding too.
            decay[mode] = Math.abs(eigen.getEigenvalue(mode).getReal());
            System.arraycopy(eigen.getEigenVector(mode).data, 0, modes.data, mode * vectors, vectors);
        }
        DMatrixRMaj shares = new DMatrixRMaj(vectors, vectors);
        CommonOps_DDRM.mult(modes, leading(basis, vectors, vectors), shares);
        DMatrixRMaj drive = new DMatrixRMaj(vectors, sources.length);
        CommonOps_DDRM.mult(modes, leading(driven, vectors, sources.length), drive);
        return new JointModes(sources, shifts, Arrays.copyOf(choice.chosen(), vectors - 1), decay, drive, shares);
    }

    private static DMatrixRMaj leading(DMatrixRMaj matrix, int rows, int columns) {
        return CommonOps_DDRM.extract(matrix, 0, rows, 0, columns);
    }
}
