package org.headfall.solver.flow;

import java.util.Objects;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.headfall.solver.linear.CellCount;
import org.headfall.solver.linear.WorkerTeam;
import org.headfall.validation.benchmark.FieldProblem;
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

/** The relaxation terms of the sealing bed in one implicit stage. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class BedBenchmark {
    /** Weight of a stage's own rate in a step of a month (d). */
    private static final double COEFFICIENT = 9;

    private static final int LAST_STAGE = 3;

    /** Cells, nearly. */
    @Param({"65536", "1000000"})
    public int cells;

    /** Threads. */
    @Param("2")
    public int threads;

    private WorkerTeam team;
    private SealingBedStorage bed;
    private double[][] rates;
    private double[] right;
    private double[] perCell;
    private double[] base;
    private double[] head;
    private int count;

    /** Makes a field and heads that fall. */
    @Setup
    public void setUp() {
        FlowProblem problem = FieldProblem.of(cells, 1);
        team = new WorkerTeam(threads);
        bed = new SealingBedStorage(Objects.requireNonNull(BedRelaxation.of(problem)), team);
        count = problem.aquifer().grid().cellCount();
        SplittableRandom random = new SplittableRandom(1);
        rates = new double[][] {random(random), random(random)};
        right = new double[count];
        perCell = random(random);
        base = random(random);
        head = random(random);
    }

    private double[] random(SplittableRandom random) {
        return random.doubles(count, 0.01, 0.02).toArray();
    }

    /** Ends the threads. */
    @TearDown
    public void end() {
        team.close();
    }

    /** What earlier stages decide. */
    @Benchmark
    public void prepare(CellCount counted) {
        bed.prepareStage(LAST_STAGE, COEFFICIENT, COEFFICIENT, rates, right);
        counted.perCell += count;
    }

    /** What the stage's own head decides; the same again and again, so memories stay as they are. */
    @Benchmark
    public void complete(CellCount counted) {
        bed.completeStage(LAST_STAGE, COEFFICIENT, perCell, perCell, base, head);
        counted.perCell += count;
    }
}
