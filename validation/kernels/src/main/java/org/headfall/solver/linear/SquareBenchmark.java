package org.headfall.solver.linear;

import java.util.concurrent.TimeUnit;
import org.headfall.validation.benchmark.BenchmarkProblem;
import org.headfall.validation.benchmark.Variant;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/** The benchmark problem on a square grid with a step of a year, for one or more right-hand sides and threads. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public abstract class SquareBenchmark {
    private static final double YEAR = 365;

    /** Cells a side. */
    @Param({"256", "1024"})
    public int n;

    /** Right-hand sides at once. */
    @Param({"1", "16"})
    public int systems;

    /** Threads. */
    @Param("2")
    public int threads;

    /** The threads. */
    protected WorkerTeam team;

    /** Starts the threads and makes the problem. */
    protected BenchmarkProblem begin(Variant variant) {
        team = new WorkerTeam(threads);
        BenchmarkProblem problem = new BenchmarkProblem(n, n, variant);
        problem.setStep(YEAR);
        return problem;
    }

    /** Ends the threads. */
    @TearDown
    public void end() {
        team.close();
    }
}
