package org.headfall.solver.response;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.EigenDecomposition_F64;

/**
 * A small model of {@code M dz/dt + L z = g q(t)}, symmetric and with many unknowns, from its transfer function
 * {@code H(s) = g^T (s M + L)^-1 g} and its derivative at some shifts s_a. It is the Galerkin projection on the solutions
 * z_a at the shifts (rational Krylov space, Ruhe 1984, Linear Algebra Appl. 58, 391-405), whose matrices follow from the
 * transfer function alone (Loewner matrices, Mayo and Antoulas 2007, Linear Algebra Appl. 425, 634-662):
 *
 * <pre>{@code z_a^T M z_b = (H(s_a) - H(s_b)) / (s_b - s_a),   z_a^T L z_b = (s_a H(s_a) - s_b H(s_b)) / (s_a - s_b)}</pre>
 *
 * <p>and {@code -dH/ds}, {@code H + s dH/ds} for a = b. The model meets H and its derivative at all shifts. The
 * generalised eigenproblem of both matrices gives its rates of decay mu and weights c.
 */
final class ReducedModel {

    private final double[] values;
    private final double[] norms;
    private final DMatrixRMaj mass;
    private final DMatrixRMaj stiffness;

    /**
     * Model of a transfer function.
     *
     * @param shifts the shifts (1/d), positive, all different
     * @param values H at the shifts (d/m²)
     * @param falls {@code -dH/ds} at the shifts (d²/m²)
     * @param scale what the falls would be if nothing in them cancelled out: rounding is judged by it (d²/m²), positive
     */
    ReducedModel(double[] shifts, double[] values, double[] falls, double[] scale) {
        int n = shifts.length;
        this.values = values;
        norms = new double[n];
        mass = new DMatrixRMaj(n, n);
        stiffness = new DMatrixRMaj(n, n);
        for (int a = 0; a < n; a++) {
            norms[a] = Math.sqrt(scale[a]);
            set(a, a, falls[a], values[a] - shifts[a] * falls[a]);
            for (int b = 0; b < a; b++) {
                double apart = shifts[a] - shifts[b];
                set(a, b, (values[b] - values[a]) / apart, (shifts[a] * values[a] - shifts[b] * values[b]) / apart);
            }
        }
    }

    private void set(int a, int b, double m, double l) {
        double norm = norms[a] * norms[b];
        mass.set(a, b, m / norm);
        mass.set(b, a, m / norm);
        stiffness.set(a, b, l / norm);
        stiffness.set(b, a, l / norm);
    }

    /**
     * Response at the source to a source that is 1 from time zero on.
     *
     * @param smallestDirection share below which directions of the space are what the linear solver leaves
     */
    StepResponse stepResponse(double smallestDirection) {
        RelaxingModes modes = modes(orthonormalSpace(mass, smallestDirection), stiffness, norms, values);
        double[] weight =
                Arrays.stream(modes.source()).map(source -> source * source).toArray();
        return new StepResponse(modes.decay(), weight);
    }

    /**
     * The modes of the model, each a sum of the solutions at the shifts.
     *
     * @param smallestDirection share below which directions of the space are what the linear solver leaves
     */
    RelaxingModes modes(double smallestDirection) {
        return modes(orthonormalSpace(mass, smallestDirection), stiffness, norms, values);
    }

    private static RelaxingModes modes(DMatrixRMaj space, DMatrixRMaj stiffness, double[] norms, double[] values) {
        int size = space.numCols;
        DMatrixRMaj product = new DMatrixRMaj(space.numRows, size);
        DMatrixRMaj projected = new DMatrixRMaj(size, size);
        CommonOps_DDRM.mult(stiffness, space, product);
        CommonOps_DDRM.multTransA(space, product, projected);
        EigenDecomposition_F64<DMatrixRMaj> eigen = symmetricEigen(projected);
        double[] decay = new double[size];
        double[] source = new double[size];
        double[][] shares = new double[size][values.length];
        DMatrixRMaj mode = new DMatrixRMaj(space.numRows, 1);
        for (int m = 0; m < size; m++) {
            // None is negative but by rounding, where its weight is rounding too.
            decay[m] = Math.abs(eigen.getEigenvalue(m).getReal());
            CommonOps_DDRM.mult(space, eigen.getEigenVector(m), mode);
            for (int a = 0; a < values.length; a++) {
                shares[m][a] = mode.get(a) / norms[a];
                source[m] += shares[m][a] * values[a];
            }
        }
        return new RelaxingModes(decay, source, shares);
    }

    /** Columns that span the space and are orthonormal in the mass matrix; none for a source that cancels out. */
    private static DMatrixRMaj orthonormalSpace(DMatrixRMaj mass, double smallest) {
        int n = mass.numRows;
        EigenDecomposition_F64<DMatrixRMaj> eigen = symmetricEigen(mass);
        int[] kept = IntStream.range(0, n)
                .filter(i -> eigen.getEigenvalue(i).getReal() > n * smallest)
                .toArray();
        DMatrixRMaj space = new DMatrixRMaj(n, kept.length);
        for (int column = 0; column < kept.length; column++) {
            DMatrixRMaj vector = eigen.getEigenVector(kept[column]);
            double length = Math.sqrt(eigen.getEigenvalue(kept[column]).getReal());
            for (int a = 0; a < n; a++) {
                space.set(a, column, vector.get(a) / length);
            }
        }
        return space;
    }

    private static EigenDecomposition_F64<DMatrixRMaj> symmetricEigen(DMatrixRMaj matrix) {
        EigenDecomposition_F64<DMatrixRMaj> eigen = DecompositionFactory_DDRM.eig(matrix.numRows, true, true);
        if (matrix.numRows > 0 && !eigen.decompose(matrix.copy())) {
            throw new ModesNotFoundException("eigenvalues of a reduced model", matrix.numRows, matrix.numCols);
        }
        return eigen;
    }
}
