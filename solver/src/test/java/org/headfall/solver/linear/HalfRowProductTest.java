package org.headfall.solver.linear;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The product in half rows against that of {@link FivePointMatrix}, in double precision. */
final class HalfRowProductTest {
    @ParameterizedTest
    @CsvSource({"1,1", "1,6", "6,1", "2,2", "5,4", "4,5", "17,12", "32,33", "97,64"})
    void agreesWithTheMatrixToSinglePrecision(int columns, int rows) {
        FivePointMatrix matrix = TestMatrices.random(columns, rows, 1.5, 41L * columns + rows);
        WorkerTeam team = new WorkerTeam(1);
        FinestLevel level = new FinestLevel(columns, rows);
        for (int row = 0; row < rows; row++) {
            level.copyRow(matrix, row);
        }
        HalfRowProduct product = new HalfRowProduct(matrix, level);
        product.update(team, 1);
        // The second time with another diagonal, of which only the matrix is told.
        for (double added : new double[] {0, 3}) {
            double[] ones = new double[matrix.cells()];
            Arrays.fill(ones, 1);
            matrix.shiftDiagonal(matrix.diagonal().clone(), added, ones);
            product.update(team, 1);
            check(matrix, product);
        }
    }

    private static void check(FivePointMatrix matrix, HalfRowProduct product) {
        int columns = matrix.columns();
        double[] x = TestMatrices.randomVector(matrix.cells(), 3);
        HalfRows halves = new HalfRows(columns, matrix.rows());
        for (int k = 0; k < x.length; k++) {
            float value = (float) x[k];
            halves.half(k / columns, k % columns % 2)[k % columns / 2] = value;
            x[k] = value;
        }
        double[] expected = new double[x.length];
        matrix.multiply(x, expected);
        HalfRows found = new HalfRows(columns, matrix.rows());
        HalfRowWorkspace work = new HalfRowWorkspace(columns);
        for (int row = 0; row < matrix.rows(); row++) {
            double sum = product.row(halves, found, row, work);
            double expectedSum = 0;
            double size = 0;
            for (int column = 0; column < columns; column++) {
                int k = row * columns + column;
                double terms = matrix.diagonal()[k] * 4;
                assertEquals(expected[k], found.half(row, column % 2)[column / 2], 1e-6 * terms, "cell " + k);
                expectedSum += x[k] * expected[k];
                size += Math.abs(x[k]) * terms;
            }
            assertEquals(expectedSum, sum / RowKernels.SQUARE_SCALE, 1e-6 * size, "row " + row);
        }
    }
}
