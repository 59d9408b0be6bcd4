package org.headfall.solver.response;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.ejml.data.DMatrixRMaj;
import org.junit.jupiter.api.Test;

class SharedModesTest {

    /** No iteration settles on what is not a number: the reason is told with the size of the matrix. */
    @Test
    void singularValuesThatAreNotFoundHaveANamedReason() {
        DMatrixRMaj matrix = new DMatrixRMaj(3, 2);
        matrix.fill(Double.NaN);
        ModesNotFoundException thrown =
                assertThrows(ModesNotFoundException.class, () -> SharedModes.pseudoInverse(matrix));
        assertTrue(thrown.getMessage().contains("3 by 2"), thrown.getMessage());
    }
}
