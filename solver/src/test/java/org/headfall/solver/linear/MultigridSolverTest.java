package org.headfall.solver.linear;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.Arrays;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

final class MultigridSolverTest extends LinearSolverContract {
    private static final StoppingRule RULE = StoppingRule.relative(1e-8);

    @Override
    LinearSolver solver(FivePointMatrix matrix) {
        return new MultigridSolver(matrix, new WorkerTeam(1));
    }

    @Test
    void takesTheQuickMultigridWhereCouplingsAreBalancedAndTheRobustOneElsewhere() {
        WorkerTeam team = new WorkerTeam(1);
        assertTrue(new MultigridSolver(TestMatrices.random(40, 40, 0.3, 1), team).isQuick());
        assertFalse(new MultigridSolver(TestMatrices.anisotropic(40, 40, 100, 1), team).isQuick());
        assertFalse(new MultigridSolver(TestMatrices.anisotropic(40, 40, 0.01, 1), team).isQuick());
        assertFalse(new MultigridSolver(TestMatrices.refined(60, 50), team).isQuick());
    }

    @Test
    void turnsToTheRobustMultigridWhenTheQuickOneFallsShort() {
        FivePointMatrix matrix = TestMatrices.anisotropic(300, 300, 1e-4, 2);
        MultigridSolver solver = new MultigridSolver(matrix, new WorkerTeam(1), true);
        double[] rightHandSide = TestMatrices.randomVector(matrix.cells(), 3);
        SolveReport report = solver.solve(rightHandSide, new double[matrix.cells()], RULE);
        assertEquals(SolveStatus.CONVERGED, report.status());
        assertFalse(solver.isQuick());
    }

    @Test
    void solvesMoreSystemsThanAdvanceSideBySideToTheSameBitsAsOneByOne() {
        // Two of these at once are as many cells as stay in a cache.
        FivePointMatrix matrix = TestMatrices.random(400, 390, 1.0, 15);
        double[][] rightHandSides = new double[5][];
        Arrays.setAll(rightHandSides, system -> TestMatrices.randomVector(matrix.cells(), 30 + system));
        double[][] solutions = new double[5][matrix.cells()];
        SolveReport[] reports = solver(matrix).solveAll(rightHandSides, solutions, RULE);
        LinearSolver oneByOne = solver(matrix);
        for (int system = 0; system < 5; system++) {
            double[] single = new double[matrix.cells()];
            assertEquals(oneByOne.solve(rightHandSides[system], single, RULE), reports[system]);
            assertArrayEquals(single, solutions[system]);
        }
    }

    @ParameterizedTest
    @CsvSource({"200,170,1", "170,200,100", "201,177,0.01", "64,1030,1", "1030,64,1", "500,3,1", "3,500,100"})
    void staysWithinTwentyIterations(int columns, int rows, double anisotropy) {
        FivePointMatrix matrix = TestMatrices.anisotropic(columns, rows, anisotropy, 4);
        assertIterations(matrix, 20);
    }

    @Test
    void staysWithinTwentyIterationsOnAGridRefinedAroundBores() {
        assertIterations(TestMatrices.refined(150, 120), 20);
    }

    @ParameterizedTest
    @ValueSource(doubles = {1e7, 1e3, 1, 1e-3, 1e-6, 0})
    void holdsFromTinyStepsToTheSteadyState(double factor) {
        FivePointMatrix matrix = TestMatrices.refined(130, 100);
        double[] ones = new double[matrix.cells()];
        Arrays.fill(ones, 1);
        matrix.shiftDiagonal(matrix.diagonal().clone(), factor, ones);
        assertIterations(matrix, 20);
    }

    private void assertIterations(FivePointMatrix matrix, int most) {
        double[] solution = new double[matrix.cells()];
        double[] rightHandSide = new double[matrix.cells()];
        rightHandSide[matrix.cells() / 2 + matrix.columns() / 2] = 1;
        SolveReport report = solver(matrix).solve(rightHandSide, solution, RULE);
        assertEquals(SolveStatus.CONVERGED, report.status());
        assertTrue(report.iterations() <= most, () -> matrix + ": " + report.describe());
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void givesTheSameBitsForAnyNumberOfThreads(boolean quick) {
        FivePointMatrix matrix = TestMatrices.random(310, 290, 1.0, 5);
        double[] rightHandSide = TestMatrices.randomVector(matrix.cells(), 6);
        double[] expected = new double[matrix.cells()];
        SolveReport single = new MultigridSolver(matrix, new WorkerTeam(1), quick).solve(rightHandSide, expected, RULE);
        for (int threads = 2; threads <= 5; threads++) {
            try (WorkerTeam team = new WorkerTeam(threads)) {
                double[] solution = new double[matrix.cells()];
                SolveReport report = new MultigridSolver(matrix, team, quick).solve(rightHandSide, solution, RULE);
                assertEquals(single, report, "threads " + threads);
                assertArrayEquals(expected, solution, "threads " + threads);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void allocatesOnlyItsReport(boolean quick) {
        FivePointMatrix matrix = TestMatrices.random(120, 100, 0.5, 7);
        MultigridSolver solver = new MultigridSolver(matrix, new WorkerTeam(1), quick);
        double[] rightHandSide = TestMatrices.randomVector(matrix.cells(), 8);
        double[] solution = new double[matrix.cells()];
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long thread = Thread.currentThread().getId();
        long least = Long.MAX_VALUE;
        for (int i = 0; i < 10; i++) {
            Arrays.fill(solution, 0);
            long before = threads.getThreadAllocatedBytes(thread);
            solver.solve(rightHandSide, solution, RULE);
            least = Math.min(least, threads.getThreadAllocatedBytes(thread) - before);
        }
        assertTrue(least <= 1024, "bytes allocated by one solve: " + least);
    }

    /** Bytes of all threads that work, the team's own included, for several systems at once. */
    @Test
    void twoThreadsAllocateNothingForSeveralSystems() {
        FivePointMatrix matrix = TestMatrices.random(200, 180, 0.5, 7);
        int systems = 4;
        double[][] rightHandSides = new double[systems][];
        Arrays.setAll(rightHandSides, l -> TestMatrices.randomVector(matrix.cells(), 8 + l));
        double[][] solutions = new double[systems][matrix.cells()];
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        Set<Long> others = Arrays.stream(threads.getAllThreadIds()).boxed().collect(Collectors.toSet());
        try (WorkerTeam team = new WorkerTeam(2)) {
            MultigridSolver solver = new MultigridSolver(matrix, team);
            long[] working = LongStream.concat(
                            LongStream.of(Thread.currentThread().getId()),
                            Arrays.stream(threads.getAllThreadIds()).filter(id -> !others.contains(id)))
                    .toArray();
            assertTrue(working.length >= 2, "threads at work: " + working.length);
            long least = Long.MAX_VALUE;
            for (int i = 0; i < 10; i++) {
                for (double[] solution : solutions) {
                    Arrays.fill(solution, 0);
                }
                long before =
                        Arrays.stream(threads.getThreadAllocatedBytes(working)).sum();
                solver.solveAll(rightHandSides, solutions, RULE);
                long after =
                        Arrays.stream(threads.getThreadAllocatedBytes(working)).sum();
                least = Math.min(least, after - before);
            }
            assertTrue(least <= 4096, "bytes allocated by solving four systems: " + least);
        }
    }
}
