package org.headfall.solver.linear;

import java.util.Arrays;
import org.headfall.validation.benchmark.BenchmarkProblem;
import org.headfall.validation.benchmark.Variant;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Setup;

/** Whole solves to 1e-8; per cell, system and iteration under {@code perCell}. */
public class SolveBenchmark extends SquareBenchmark {
    private static final StoppingRule RULE = StoppingRule.relative(1e-8);

    /** Plain squares, which points relax, or stretched cells, which lines do. */
    @Param({"PLAIN", "STRETCHED"})
    public Variant variant;

    private MultigridSolver solver;
    private double[][] rightHandSides;
    private double[][] solutions;

    /** Sets up the solver. */
    @Setup
    public void setUp() {
        BenchmarkProblem problem = begin(variant);
        solver = new MultigridSolver(problem.matrix(), team);
        rightHandSides = new double[systems][];
        Arrays.setAll(rightHandSides, problem::rightHandSide);
        solutions = new double[systems][n * n];
    }

    /** Solves from zero; zeros are written anew, which takes a small part. */
    @Benchmark
    public void solve(CellCount count) {
        for (double[] solution : solutions) {
            Arrays.fill(solution, 0);
        }
        for (SolveReport report : solver.solveAll(rightHandSides, solutions, RULE)) {
            count.perCell += (long) n * n * report.iterations();
        }
    }

    /** Sets up multigrid for another step. */
    @Benchmark
    public void newStep(CellCount count) {
        solver.diagonalChanged();
        count.perCell += (long) n * n;
    }
}
