package org.headfall.solver.linear;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

final class PointMultigridTest extends LinearSolverContract {
    @Override
    LinearSolver solver(FivePointMatrix matrix) {
        WorkerTeam team = new WorkerTeam(1);
        return new ConjugateGradients<>(matrix, new PointMultigrid(matrix, team), team);
    }

    /** Conjugate gradients rely on it: (a, M b) = (M a, b), to the rounding of single precision. */
    @ParameterizedTest
    @CsvSource({"1,9", "9,1", "40,41", "41,40", "90,70"})
    void theCycleIsSymmetricAndPositive(int columns, int rows) {
        FivePointMatrix matrix = TestMatrices.random(columns, rows, 1.5, 21);
        int cells = matrix.cells();
        double[][] vectors = {TestMatrices.randomVector(cells, 22), TestMatrices.randomVector(cells, 23)};
        PointMultigrid multigrid = new PointMultigrid(matrix, new WorkerTeam(1));
        List<HalfRowSystem> systems = List.of(multigrid.newSystem(1), multigrid.newSystem(1));
        for (int l = 0; l < 2; l++) {
            scaleAsSolvesDo(vectors[l]);
            fill(systems.get(l).residual, vectors[l], columns);
        }
        multigrid.apply(systems, 2);
        double[][] images = new double[2][];
        for (int l = 0; l < 2; l++) {
            images[l] = values(systems.get(l).correction, columns, rows);
        }
        double ab = product(vectors[0], images[1]);
        double ba = product(vectors[1], images[0]);
        double own = product(vectors[0], images[0]);
        assertTrue(own > 0);
        assertEquals(ab, ba, 1e-5 * own);
        double sum = Arrays.stream(systems.get(0).rowSums).sum();
        // Sums are made in single precision.
        assertEquals(own, sum / RowKernels.SQUARE_SCALE, 1e-6 * own);
    }

    private static void scaleAsSolvesDo(double[] values) {
        double scale = RowKernels.scaleOf(TestMatrices.norm(values));
        for (int k = 0; k < values.length; k++) {
            values[k] *= scale;
        }
    }

    private static void fill(HalfRows rows, double[] values, int columns) {
        for (int k = 0; k < values.length; k++) {
            int column = k % columns;
            rows.half(k / columns, column % 2)[column / 2] = (float) values[k];
            values[k] = (float) values[k];
        }
    }

    private static double[] values(HalfRows rows, int columns, int count) {
        double[] values = new double[columns * count];
        for (int k = 0; k < values.length; k++) {
            int column = k % columns;
            values[k] = rows.half(k / columns, column % 2)[column / 2];
        }
        return values;
    }

    private static double product(double[] a, double[] b) {
        double sum = 0;
        for (int k = 0; k < a.length; k++) {
            sum += a[k] * b[k];
        }
        return sum;
    }

    /** From steps in which nothing flows to the steady state, with couplings balanced as they are where it is chosen. */
    @ParameterizedTest
    @ValueSource(doubles = {1e7, 1e3, 1, 1e-3, 1e-6, 0})
    void holdsFromTinyStepsToTheSteadyState(double factor) {
        FivePointMatrix matrix = TestMatrices.random(211, 190, 0.5, 24);
        double[] ones = new double[matrix.cells()];
        Arrays.fill(ones, 1);
        matrix.shiftDiagonal(matrix.diagonal().clone(), factor, ones);
        double[] rightHandSide = new double[matrix.cells()];
        rightHandSide[matrix.cells() / 2 + 90] = 1;
        SolveReport report =
                solver(matrix).solve(rightHandSide, new double[matrix.cells()], StoppingRule.relative(1e-8));
        assertEquals(SolveStatus.CONVERGED, report.status());
        assertTrue(report.iterations() <= 20, report::describe);
    }

    /** Lines that know nothing of each other: weights across them once were zero over zero. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void holdsWhereCellsAreCoupledOneWayOnly(boolean alongX) {
        FivePointMatrix coupled = TestMatrices.random(50, 60, 0.5, 25);
        double[] none = new double[coupled.cells()];
        double[] tie = new double[coupled.cells()];
        for (int k = 0; k < tie.length; k++) {
            tie[k] = (alongX ? k % 50 : k / 50) == 0 ? 1 : 0;
        }
        FivePointMatrix matrix = TestMatrices.fromCouplings(
                50, 60, alongX ? coupled.east() : none, alongX ? none : coupled.north(), tie);
        double[] rightHandSide = TestMatrices.randomVector(matrix.cells(), 26);
        SolveReport report =
                solver(matrix).solve(rightHandSide, new double[matrix.cells()], StoppingRule.relative(1e-8));
        assertEquals(SolveStatus.CONVERGED, report.status());
    }

    /** The hierarchy is in single precision, which ends at 1e-38 and 3e38. */
    @ParameterizedTest
    @ValueSource(doubles = {1e-100, 1e-30, 1e30, 1e100})
    void solvesForRightHandSidesBeyondSinglePrecision(double size) {
        FivePointMatrix matrix = TestMatrices.random(64, 70, 0.5, 27);
        LinearSolver solver = solver(matrix);
        double[] rightHandSide = TestMatrices.randomVector(matrix.cells(), 28);
        SolveReport plain = solver.solve(rightHandSide, new double[matrix.cells()], StoppingRule.relative(1e-8));
        for (int k = 0; k < rightHandSide.length; k++) {
            rightHandSide[k] *= size;
        }
        SolveReport scaled = solver.solve(rightHandSide, new double[matrix.cells()], StoppingRule.relative(1e-8));
        assertEquals(SolveStatus.CONVERGED, scaled.status());
        assertEquals(plain.iterations(), scaled.iterations());
    }
}
