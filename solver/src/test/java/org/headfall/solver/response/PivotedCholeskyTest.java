package org.headfall.solver.response;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.RandomMatrices_DDRM;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.CholeskyDecomposition_F64;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The reference is the factorisation of EJML, of the products of the chosen in their order. */
class PivotedCholeskyTest {

    private static final long SEED = 11;

    /** Products of some vectors of which a few are independent. */
    private static DMatrixRMaj products(int vectors, int independent) {
        Random random = new Random(SEED);
        DMatrixRMaj some = RandomMatrices_DDRM.rectangle(vectors, independent, -1, 1, random);
        DMatrixRMaj products = new DMatrixRMaj(vectors, vectors);
        CommonOps_DDRM.multTransB(some, some, products);
        return products;
    }

    @ParameterizedTest
    @CsvSource({"0, 0", "1, 1", "7, 7", "12, 5", "30, 30"})
    void inverseIsThatOfTheFactorOfTheChosen(int vectors, int independent) {
        DMatrixRMaj products = products(vectors, independent);
        PivotedCholesky cholesky = new PivotedCholesky(products, 1e-10);
        int[] chosen = cholesky.chosen();
        assertEquals(independent, chosen.length);
        assertEquals(independent, Arrays.stream(chosen).distinct().count());
        assertEquals(independent, cholesky.countAbove(1e-10));
        if (independent == 0) {
            assertEquals(0, cholesky.orthonormal().numRows);
            return;
        }
        DMatrixRMaj ofChosen = new DMatrixRMaj(independent, independent);
        for (int i = 0; i < independent; i++) {
            for (int j = 0; j < independent; j++) {
                ofChosen.set(i, j, products.get(chosen[i], chosen[j]));
            }
        }
        CholeskyDecomposition_F64<DMatrixRMaj> reference = DecompositionFactory_DDRM.chol(independent, true);
        assertTrue(reference.decompose(ofChosen.copy()));
        DMatrixRMaj inverse = reference.getT(null);
        for (int k = 1; k < independent; k++) {
            assertTrue(
                    inverse.get(k, k) <= inverse.get(k - 1, k - 1) * (1 + 1e-9),
                    "the worst foretold comes first: " + k);
        }
        assertTrue(CommonOps_DDRM.invert(inverse));
        double scale = CommonOps_DDRM.elementMaxAbs(inverse);
        for (int i = 0; i < independent; i++) {
            for (int j = 0; j < independent; j++) {
                assertEquals(inverse.get(i, j), cholesky.orthonormal().get(i, j), 1e-8 * scale, i + ", " + j);
            }
        }
    }

    @Test
    void vectorsOfNoLengthAreNeverChosen() {
        assertEquals(0, new PivotedCholesky(new DMatrixRMaj(4, 4), 1e-12).chosen().length);
    }
}
