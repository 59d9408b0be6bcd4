package org.headfall.solver.response;

import java.util.Arrays;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.EigenDecomposition_F64;
import org.headfall.solver.flow.SourceFields;
import org.headfall.solver.flow.TransferValues;

/**
 * A small model of the fields of several sources at once, of {@code M dz/dt + L z = G q(t)} with a column of G for each source: the
 * Galerkin projection {@code V^T M V dy/dt + V^T L V y = V^T G q} on the solutions {@code (s_a M + L)^-1 g_i} of all sources at all
 * shifts and an even fall of all heads.
 *
 * <p>Where it comes from, titles and numbers from memory and to be checked:
 *
 * <ul>
 *   <li>The space is a rational Krylov space (Ruhe 1984, Rational Krylov sequence methods for eigenvalue computation, Linear
 *       Algebra and its Applications 58, 391-405), here a block one, with a block of G for each shift.
 *   <li>That the transfer function of the projection, {@code G^T V (s V^T M V + V^T L V)^-1 V^T G}, meets the true one and its
 *       derivative at every shift is the moment matching of Grimme (1997, Krylov projection methods for model reduction, PhD
 *       thesis, University of Illinois), two-sided because the problem is symmetric.
 *   <li>The projected matrices from transfer functions alone are Loewner matrices (Mayo and Antoulas 2007, Linear Algebra and
 *       its Applications 425, 634-662), in the symmetric form written out at {@link ReducedModel}, with {@code H_ij} for H.
 *   <li>The order of the basis is that of {@link PivotedCholesky}.
 *   <li>Ours: the even fall in the space, so that what the model leaves of the equation is none in the sum over all cells and
 *       water balances close; the cut where all others are foretold to what the linear solver leaves; and the error told from
 *       a poorer model of the first vectors of the same basis.
 * </ul>
 *
 * <p>What one source does far away is made up of what the others do there as well, so that the model errs a few times less than
 * one of that source alone from solutions at the same shifts, and its weights hardly cancel.
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
     * @throws ModesNotFoundException if eigenvalues are not found
     */
    JointModes modes(double smallest) {
        int vectors = 1 + choice.countAbove(smallest);
        EigenDecomposition_F64<DMatrixRMaj> eigen = DecompositionFactory_DDRM.eig(vectors, true, true);
        if (!eigen.decompose(leading(stiffness, vectors, vectors))) {
            throw new ModesNotFoundException("eigenvalues of a joint model of many sources", vectors, vectors);
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
