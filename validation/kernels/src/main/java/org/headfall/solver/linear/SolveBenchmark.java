package org.headfall.solver.linear;

import java.util.Arrays;
import java.util.concurrent.TimeUnit;
import org.headfall.validation.benchmark.BenchmarkProblem;
import org.headfall.validation.benchmark.Variant;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/** Whole solves to 1e-8; per cell, system and iteration under {@code perCell}. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class SolveBenchmark {
    private static final double YEAR = 365;
    private static final StoppingRule RULE = StoppingRule.relative(1e-8);

    /** Cells a side. */
    @Param({"256", "1024"})
    public int n;

    /** Right-hand sides at once. */
    @Param({"1", "16"})
    public int systems;

    /** Threads. */
    @Param("2")
    public int threads;

    /** Plain squares, which points relax, or stretched cells, which lines do. */
    @Param({"PLAIN", "STRETCHED"})
    public Variant variant;

    private WorkerTeam team;
    private MultigridSolver solver;
    private double[][] rightHandSides;
    private double[][] solutions;

    /** Sets up the solver. */
    @Setup
    public void setUp() {
        BenchmarkProblem problem = new BenchmarkProblem(n, n, variant);
        problem.setStep(YEAR);
        team = new WorkerTeam(threads);
        solver = new MultigridSolver(problem.matrix(), team);
        rightHandSides = new double[systems][];
        Arrays.setAll(rightHandSides, problem::rightHandSide);
        solutions = new double[systems][n * n];
    }

    /** Ends the threads. */
    @TearDown
    public void end() {
        team.close();
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
