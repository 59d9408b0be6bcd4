package org.headfall.solver.linear;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What every linear solver keeps to. */
abstract class LinearSolverContract {
    abstract LinearSolver solver(FivePointMatrix matrix);

    /** Whether a solve can run out of iterations. */
    boolean iterates() {
        return true;
    }

    @ParameterizedTest
    @CsvSource({"1,1", "1,7", "9,1", "2,2", "3,5", "17,64", "64,17", "31,33", "100,3", "3,100", "120,90"})
    void findsTheAnswerOfAMatrixWithKnownSolution(int columns, int rows) {
        for (long seed = 1; seed <= 3; seed++) {
            FivePointMatrix matrix = TestMatrices.random(columns, rows, 2.0, seed);
            double[] expected = TestMatrices.randomVector(matrix.cells(), seed + 100);
            double[] rightHandSide = new double[matrix.cells()];
            matrix.multiply(expected, rightHandSide);
            double[] solution = new double[matrix.cells()];
            SolveReport report = solver(matrix).solve(rightHandSide, solution, StoppingRule.relative(1e-12));
            assertEquals(SolveStatus.CONVERGED, report.status(), "seed " + seed);
            assertArrayEquals(expected, solution, 1e-7, "seed " + seed);
        }
    }

    @Test
    void reportsTheResidualOfTheAnswerItself() {
        FivePointMatrix matrix = TestMatrices.random(40, 30, 1.0, 5);
        double[] rightHandSide = TestMatrices.randomVector(1200, 6);
        double[] solution = new double[1200];
        SolveReport report = solver(matrix).solve(rightHandSide, solution, StoppingRule.relative(1e-6));
        assertEquals(TestMatrices.residualNorm(matrix, rightHandSide, solution), report.residualNorm(), 1e-12);
        assertTrue(report.residualNorm() <= 1e-6 * report.rightHandSideNorm(), report::describe);
        assertEquals(TestMatrices.norm(rightHandSide), report.rightHandSideNorm(), 1e-10);
    }

    @Test
    void stopsAtAnAbsoluteResidualWithoutWorkWhenTheGuessIsGoodEnough() {
        FivePointMatrix matrix = TestMatrices.random(20, 30, 1.0, 7);
        double[] rightHandSide = TestMatrices.randomVector(600, 8);
        double[] solution = new double[600];
        SolveReport report = solver(matrix).solve(rightHandSide, solution, StoppingRule.absolute(1e6));
        assertEquals(0, report.iterations());
        assertEquals(SolveStatus.CONVERGED, report.status());
    }

    @Test
    void answersZeroForARightHandSideOfZero() {
        FivePointMatrix matrix = TestMatrices.random(5, 4, 1.0, 7);
        double[] solution = new double[20];
        SolveReport report = solver(matrix).solve(new double[20], solution, StoppingRule.relative(1e-8));
        assertEquals(SolveStatus.CONVERGED, report.status());
        assertArrayEquals(new double[20], solution);
    }

    @Test
    void answersForThePresentDiagonalWithTheFactorsOfOneNearIt() {
        FivePointMatrix matrix = TestMatrices.random(31, 22, 1.0, 19);
        double[] base = matrix.diagonal().clone();
        double[] storage = new double[base.length];
        Arrays.fill(storage, 1.0);
        double[] rightHandSide = TestMatrices.randomVector(base.length, 20);
        matrix.shiftDiagonal(base, 1, storage);
        LinearSolver solver = solver(matrix);
        matrix.shiftDiagonal(base, 1.4, storage);
        double[] solution = new double[base.length];
        SolveReport report = solver.solve(rightHandSide, solution, StoppingRule.relative(1e-11));
        assertEquals(SolveStatus.CONVERGED, report.status());
        assertTrue(
                TestMatrices.residualNorm(matrix, rightHandSide, solution) <= 1e-11 * report.rightHandSideNorm(),
                report::describe);
    }

    @Test
    void followsAChangedDiagonal() {
        FivePointMatrix matrix = TestMatrices.random(33, 21, 1.0, 9);
        LinearSolver solver = solver(matrix);
        double[] base = matrix.diagonal().clone();
        double[] storage = new double[base.length];
        Arrays.fill(storage, 1.0);
        double[] rightHandSide = TestMatrices.randomVector(base.length, 10);
        for (double factor : new double[] {1e6, 1, 1e-6, 0}) {
            matrix.shiftDiagonal(base, factor, storage);
            solver.diagonalChanged();
            double[] solution = new double[base.length];
            SolveReport report = solver.solve(rightHandSide, solution, StoppingRule.relative(1e-9));
            assertEquals(SolveStatus.CONVERGED, report.status(), "factor " + factor);
            assertTrue(report.iterations() < 150, "factor " + factor);
        }
    }

    @Test
    void leavesDeadCellsAndIslandsApart() {
        FivePointMatrix matrix = TestMatrices.withDeadCells(41, 37, 11);
        double[] rightHandSide = TestMatrices.randomVector(matrix.cells(), 12);
        double[] solution = new double[matrix.cells()];
        SolveReport report = solver(matrix).solve(rightHandSide, solution, StoppingRule.relative(1e-11));
        assertEquals(SolveStatus.CONVERGED, report.status());
        for (int k = 0; k < matrix.cells(); k++) {
            if (matrix.couplingSum(k) == 0 && matrix.diagonal()[k] == 1) {
                assertEquals(rightHandSide[k], solution[k], 1e-8 * (1 + report.rightHandSideNorm()));
            }
        }
    }

    @Test
    void refusesAMatrixThatNothingTiesDownAndNamesACell() {
        FivePointMatrix matrix = TestMatrices.loose(12, 8, 13);
        SingularSystemException thrown = assertThrows(SingularSystemException.class, () -> solver(matrix));
        assertEquals(0, thrown.cell());
        assertEquals(96, thrown.cellsInGroup());
        assertTrue(thrown.getMessage().contains("column 0, row 0"), thrown.getMessage());
    }

    @Test
    void refusesADiagonalThatCutsTheLastTie() {
        FivePointMatrix matrix = TestMatrices.loose(12, 8, 13);
        double[] loose = matrix.diagonal().clone();
        double[] ones = new double[loose.length];
        Arrays.fill(ones, 1);
        matrix.shiftDiagonal(loose, 1.0, ones);
        LinearSolver solver = solver(matrix);
        matrix.shiftDiagonal(loose, 0, ones);
        assertThrows(SingularSystemException.class, solver::diagonalChanged);
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 5, 16})
    void solvesSeveralSystemsToTheSameBitsAsOneByOne(int count) {
        FivePointMatrix matrix = TestMatrices.random(70, 61, 1.5, 14);
        LinearSolver solver = solver(matrix);
        double[][] rightHandSides = new double[count][];
        double[][] solutions = new double[count][matrix.cells()];
        for (int l = 0; l < count; l++) {
            rightHandSides[l] = TestMatrices.randomVector(matrix.cells(), 20 + l);
            rightHandSides[l][l] *= Math.pow(10, l);
        }
        SolveReport[] reports = solver.solveAll(rightHandSides, solutions, StoppingRule.relative(1e-9));
        for (int l = 0; l < count; l++) {
            double[] single = new double[matrix.cells()];
            SolveReport report = solver.solve(rightHandSides[l], single, StoppingRule.relative(1e-9));
            assertArrayEquals(single, solutions[l]);
            assertEquals(report, reports[l]);
        }
    }

    @Test
    void refusesNumbersThatAreNotFinite() {
        FivePointMatrix matrix = TestMatrices.random(4, 3, 1, 15);
        double[] rightHandSide = new double[12];
        rightHandSide[6] = Double.NaN;
        LinearSolver solver = solver(matrix);
        StoppingRule rule = StoppingRule.relative(1e-8);
        IllegalArgumentException thrown =
                assertThrows(IllegalArgumentException.class, () -> solver.solve(rightHandSide, new double[12], rule));
        assertTrue(thrown.getMessage().contains("column 2, row 1"), thrown.getMessage());
        assertThrows(IllegalArgumentException.class, () -> solver.solve(new double[11], new double[12], rule));
    }

    @Test
    void reachingTheIterationLimitThrowsWithBothNumbers() {
        assumeTrue(iterates());
        FivePointMatrix matrix = TestMatrices.random(60, 50, 2.0, 18);
        double[] rightHandSide = TestMatrices.randomVector(3000, 19);
        LinearSolver solver = solver(matrix);
        StoppingRule rule = StoppingRule.relative(1e-12).withIterationLimit(1);
        double[] solution = new double[3000];
        SolveFailedException thrown =
                assertThrows(SolveFailedException.class, () -> solver.solve(rightHandSide, solution, rule));
        SolveReport report = thrown.report();
        assertEquals(SolveStatus.ITERATION_LIMIT, report.status());
        assertEquals(1, report.iterations());
        assertEquals(1e-12 * TestMatrices.norm(rightHandSide), report.targetNorm(), 1e-20);
        double reached = TestMatrices.residualNorm(matrix, rightHandSide, solution);
        assertEquals(reached, report.residualNorm(), 1e-9 * reached);
        String message = String.valueOf(thrown.getMessage());
        assertTrue(message.contains("asked for " + report.targetNorm()), message);
        assertTrue(message.contains("residual norm " + report.residualNorm()), message);
        double[][] solutions = {new double[3000]};
        assertThrows(
                SolveFailedException.class, () -> solver.solveAll(new double[][] {rightHandSide}, solutions, rule));
    }

    @Test
    void saysWhenRoundingIsTheLimit() {
        FivePointMatrix matrix = TestMatrices.random(25, 25, 2.0, 16);
        double[] rightHandSide = TestMatrices.randomVector(625, 17);
        SolveReport report = solver(matrix).solve(rightHandSide, new double[625], StoppingRule.relative(1e-30));
        assertEquals(SolveStatus.ROUNDING_LIMIT, report.status());
        assertTrue(report.relativeResidual() < 1e-11, report::describe);
    }
}
