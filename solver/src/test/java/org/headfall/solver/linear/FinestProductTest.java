package org.headfall.solver.linear;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The set-up that walks over rows against the plain one by two products in full. */
class FinestProductTest {

    @ParameterizedTest
    @CsvSource({"1,1", "1,6", "6,1", "2,2", "5,4", "4,5", "17,12", "12,17", "31,33"})
    void agreesWithTwoProductsInFull(int columns, int rows) {
        FivePointMatrix matrix = TestMatrices.random(columns, rows, 2, 31L * columns + rows);
        NinePointOperator fine = new NinePointOperator(columns, rows);
        fine.copy(matrix);
        GalerkinProduct acrossColumns = new GalerkinProduct(fine, false);
        new PointInterpolation(acrossColumns, false).rowTask.run(0, rows);
        acrossColumns.rowTask.run(0, rows);
        GalerkinProduct acrossRows = new GalerkinProduct(acrossColumns.coarse, true);
        new PointInterpolation(acrossRows, true).rowTask.run(0, rows);
        acrossRows.rowTask.run(0, acrossRows.coarse.rows);

        NinePointOperator expected = acrossRows.coarse;
        NinePointOperator found = new NinePointOperator(expected.columns, expected.rows);
        FinestLevel level = new FinestLevel(columns, rows);
        FinestProduct product = new FinestProduct(matrix, level, found);
        // In parts, as threads do it, the last one first.
        int middle = expected.rows / 3;
        product.setUp(middle, expected.rows);
        product.setUp(0, middle);

        assertClose(expected.diagonal, found.diagonal);
        assertClose(expected.east, found.east);
        assertClose(expected.north, found.north);
        assertClose(expected.northEast, found.northEast);
        assertClose(expected.northWest, found.northWest);
        for (int row = 1; row < rows; row += 2) {
            for (int i = 0; i < columns / 2; i++) {
                int odd = fine.index(2 * i + 1, row);
                assertEquals(acrossColumns.before[odd], level.columnBefore[row / 2][i], 1e-6);
                assertEquals(acrossColumns.after[odd], level.columnAfter[row / 2][i], 1e-6);
            }
            for (int i = 0; i < expected.columns; i++) {
                int cell = acrossColumns.coarse.index(i, row);
                assertEquals(acrossRows.before[cell], level.rowBefore[row / 2][i], 1e-6);
                assertEquals(acrossRows.after[cell], level.rowAfter[row / 2][i], 1e-6);
            }
        }
    }

    private static void assertClose(double[] expected, double[] found) {
        double largest = Arrays.stream(expected).map(Math::abs).max().orElseThrow();
        assertArrayEquals(expected, found, 1e-13 * largest);
    }
}
