package org.headfall.solver.linear;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import java.util.stream.Stream;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class HardMatricesTest {

    /** Couplings exp(spread z) with z standard normal, scaled along x and y; ties of the first column to a head. */
    static FivePointMatrix random(int columns, int rows, double spread, double alongX, double alongY, long seed) {
        Random random = new Random(seed);
        int cells = columns * rows;
        double[] diagonal = new double[cells];
        double[] east = new double[cells];
        double[] north = new double[cells];
        for (int cell = 0; cell < cells; cell++) {
            int column = cell % columns;
            east[cell] = column + 1 < columns ? alongX * Math.exp(spread * random.nextGaussian()) : 0;
            north[cell] = cell + columns < cells ? alongY * Math.exp(spread * random.nextGaussian()) : 0;
        }
        for (int cell = 0; cell < cells; cell++) {
            int column = cell % columns;
            diagonal[cell] = east[cell] + north[cell] + (column == 0 ? alongX : 0);
            diagonal[cell] += column > 0 ? east[cell - 1] : 0;
            diagonal[cell] += cell >= columns ? north[cell - columns] : 0;
        }
        return new FivePointMatrix(columns, rows, diagonal, east, north);
    }

    @ParameterizedTest
    @CsvSource({"1,1", "1,7", "7,1", "2,2", "3,5", "5,4", "8,8", "9,6"})
    void conjugateGradientsAgreeWithADenseSolve(int columns, int rows) {
        long seed = 31L * columns + rows;
        FivePointMatrix matrix = random(columns, rows, 2, 1, 1, seed);
        int n = matrix.cells();
        DMatrixRMaj dense = new DMatrixRMaj(n, n);
        for (int i = 0; i < n; i++) {
            double[] unit = new double[n];
            double[] column = new double[n];
            unit[i] = 1;
            matrix.multiply(unit, column);
            for (int j = 0; j < n; j++) {
                dense.set(j, i, column[j]);
            }
        }
        double[] right = new Random(seed).doubles(n).toArray();
        DMatrixRMaj expected = new DMatrixRMaj(n, 1);
        CommonOps_DDRM.solve(dense, new DMatrixRMaj(n, 1, true, right), expected);
        double[] solution = new double[n];
        lines(matrix).solve(right, solution, StoppingRule.relative(1e-12));
        for (int i = 0; i < n; i++) {
            assertEquals(expected.get(i), solution[i], 1e-8 * Math.abs(expected.get(i)), "seed " + seed);
        }
    }

    @Test
    void theCycleIsSymmetricAndPositive() {
        FivePointMatrix matrix = random(13, 9, 3, 100, 1, 5);
        LineMultigrid multigrid = new LineMultigrid(matrix, new WorkerTeam(1));
        Random random = new Random(6);
        double[] a = random.doubles(matrix.cells()).toArray();
        double[] b = random.doubles(matrix.cells()).toArray();
        List<DoubleSystem> systems = List.of(multigrid.newSystem(1), multigrid.newSystem(1));
        System.arraycopy(a, 0, systems.get(0).residual, 0, a.length);
        System.arraycopy(b, 0, systems.get(1).residual, 0, b.length);
        multigrid.apply(systems, 2);
        double[] ofA = systems.get(0).correction;
        double[] ofB = systems.get(1).correction;
        double ab = 0;
        double ba = 0;
        double aa = 0;
        for (int i = 0; i < a.length; i++) {
            ab += ofA[i] * b[i];
            ba += ofB[i] * a[i];
            aa += ofA[i] * a[i];
        }
        // The hierarchy is kept in single precision, so symmetry holds to its rounding.
        assertEquals(ab, ba, 1e-5 * Math.abs(ab));
        assertTrue(aa > 0);
    }

    /** Conductances of square cells by the harmonic mean, first column tied to a head: steady confined flow. */
    static FivePointMatrix flow(int columns, int rows, double alongX, double alongY, IntToDoubleFunction cellT) {
        int cells = columns * rows;
        double[] t = new double[cells];
        Arrays.setAll(t, cellT);
        double[] diagonal = new double[cells];
        double[] east = new double[cells];
        double[] north = new double[cells];
        for (int cell = 0; cell < cells; cell++) {
            int column = cell % columns;
            diagonal[cell] += column == 0 ? 2 * alongX * t[cell] : 0;
            if (column + 1 < columns) {
                east[cell] = 2 * alongX * t[cell] * t[cell + 1] / (t[cell] + t[cell + 1]);
                diagonal[cell] += east[cell];
                diagonal[cell + 1] += east[cell];
            }
            if (cell + columns < cells) {
                north[cell] = 2 * alongY * t[cell] * t[cell + columns] / (t[cell] + t[cell + columns]);
                diagonal[cell] += north[cell];
                diagonal[cell + columns] += north[cell];
            }
        }
        return new FivePointMatrix(columns, rows, diagonal, east, north);
    }

    /** The matrix of an implicit step: storage on the diagonal. */
    static FivePointMatrix stored(FivePointMatrix matrix, double storage) {
        double[] ones = new double[matrix.diagonal().length];
        Arrays.fill(ones, 1);
        matrix.shiftDiagonal(matrix.diagonal().clone(), storage, ones);
        return matrix;
    }

    static IntToDoubleFunction lognormal(double deviation, long seed) {
        Random random = new Random(seed);
        return cell -> Math.exp(deviation * random.nextGaussian());
    }

    static Stream<Arguments> hardMatrices() {
        return Stream.of(
                Arguments.of("ln T of variance 3, cell by cell", flow(250, 250, 1, 1, lognormal(1.73, 1))),
                Arguments.of("Tx 100 times Ty", flow(250, 250, 10, 0.1, lognormal(1, 2))),
                Arguments.of("Ty 100 times Tx", flow(250, 250, 0.1, 10, lognormal(1, 3))),
                Arguments.of("strip", flow(1000, 20, 1, 1, lognormal(1.73, 4))),
                Arguments.of("strip the other way", flow(20, 1000, 1, 1, lognormal(1.73, 5))),
                // One step of 365 d with S 1e-4 on 100 m cells of T 200 m2/d, over that T.
                Arguments.of(
                        "blocks of 1e-6",
                        stored(
                                flow(256, 256, 1, 1, cell -> (cell % 256 / 16 + cell / 256 / 16) % 2 == 0 ? 1 : 1e-6),
                                1.0 / 365 / 200)));
    }

    /** The bound is that of the solver's benchmark for hard variants: 20 iterations to 1e-8. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("hardMatrices")
    void hardMatricesTakeFewIterations(String name, FivePointMatrix matrix) {
        double[] right = new double[matrix.cells()];
        right[matrix.cells() / 2 + matrix.columns() / 3] = 1;
        double[] solution = new double[right.length];
        SolveReport report = lines(matrix).solve(right, solution, StoppingRule.relative(1e-8));
        assertTrue(report.iterations() <= 20, name + ": " + report);
    }

    @Test
    void cellsWithoutCouplingsStayAsTheyAre() {
        int columns = 12;
        int rows = 10;
        double[] diagonal = new double[columns * rows];
        double[] east = new double[columns * rows];
        double[] north = new double[columns * rows];
        Arrays.fill(diagonal, 1);
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < 4; column++) {
                int cell = row * columns + column;
                diagonal[cell] = 4;
                east[cell] = column < 3 ? 1 : 0;
                north[cell] = row + 1 < rows ? 1 : 0;
            }
        }
        FivePointMatrix matrix = new FivePointMatrix(columns, rows, diagonal, east, north);
        double[] right = new double[columns * rows];
        Arrays.fill(right, 7);
        double[] solution = new double[right.length];
        lines(matrix).solve(right, solution, StoppingRule.relative(1e-12));
        assertEquals(7, solution[columns - 1], 1e-10);
    }

    private static LinearSolver lines(FivePointMatrix matrix) {
        WorkerTeam team = new WorkerTeam(1);
        return new ConjugateGradients<>(matrix, new LineMultigrid(matrix, team), team);
    }
}
