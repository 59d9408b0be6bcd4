package org.headfall.validation.benchmark;

import java.lang.management.ManagementFactory;
import java.util.Arrays;
import org.headfall.solver.linear.FivePointMatrix;
import org.headfall.solver.linear.MultigridSolver;
import org.headfall.solver.linear.SolveReport;
import org.headfall.solver.linear.StoppingRule;
import org.headfall.solver.linear.WorkerTeam;

/** Times set-up and solves of one case, in as many portions as are asked for, so that cases can be timed in alternation. */
final class SolveTimer implements AutoCloseable {
    private static final StoppingRule RULE = StoppingRule.relative(1e-8);
    private static final double WARM_UP_SECONDS = 4;
    private static final int WARM_UP_SOLVES = 3;
    private static final int BYTES_OF_MATRIX = 24;

    private final SolveCase solved;
    private final BenchmarkProblem problem;
    private final WorkerTeam team;
    private final double[][] rightHandSides;
    private final double[][] solutions;
    private final Medians setUp = new Medians();
    private final Medians refresh = new Medians();
    private final Medians solve = new Medians();
    private final double bytesPerCell;
    private MultigridSolver solver;
    private SolveReport[] reports;

    SolveTimer(SolveCase solved) {
        this.solved = solved;
        this.problem = new BenchmarkProblem(solved.columns(), solved.rows(), solved.variant());
        problem.setStep(solved.days());
        this.team = new WorkerTeam(solved.threads());
        FivePointMatrix matrix = problem.matrix();
        long before = usedBytes();
        int count = solved.rightHandSides();
        this.rightHandSides = new double[count][];
        for (int l = 0; l < count; l++) {
            rightHandSides[l] = count == 1 ? problem.rightHandSide() : problem.rightHandSide(l);
        }
        this.solutions = new double[count][matrix.cells()];
        this.solver = new MultigridSolver(matrix, team);
        this.reports = solver.solveAll(rightHandSides, solutions, RULE);
        this.bytesPerCell = BYTES_OF_MATRIX + (double) (usedBytes() - before) / matrix.cells();
    }

    private static long usedBytes() {
        System.gc();
        return ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed();
    }

    /** Lets the compiler find the loops of set-up and of solves, and the heap grow to what they need. */
    void warmUp() {
        long start = System.nanoTime();
        for (int run = 0; run < WARM_UP_SOLVES || seconds(start) < WARM_UP_SECONDS; run++) {
            solver = new MultigridSolver(problem.matrix(), team);
            solveOnce();
            solver.diagonalChanged();
        }
    }

    /** Times a number of rounds. */
    void time(int rounds) {
        for (int round = 0; round < rounds; round++) {
            timeOnce();
        }
    }

    /** What earlier set-ups left behind is collected first; its cost is not that of the one timed. */
    private void timeOnce() {
        System.gc();
        long start = System.nanoTime();
        solver = new MultigridSolver(problem.matrix(), team);
        setUp.add(seconds(start));
        solveOnce();
        start = System.nanoTime();
        solver.diagonalChanged();
        refresh.add(seconds(start));
        clear();
        start = System.nanoTime();
        solveOnce();
        solve.add(seconds(start));
    }

    private void clear() {
        for (double[] solution : solutions) {
            Arrays.fill(solution, 0);
        }
    }

    private void solveOnce() {
        clear();
        if (solutions.length == 1) {
            reports = new SolveReport[] {solver.solve(rightHandSides[0], solutions[0], RULE)};
        } else {
            reports = solver.solveAll(rightHandSides, solutions, RULE);
        }
    }

    private static double seconds(long start) {
        return (System.nanoTime() - start) * 1e-9;
    }

    /** Returns the medians so far. */
    SolveMeasurement measurement(double memoryRate) {
        int iterations =
                Arrays.stream(reports).mapToInt(SolveReport::iterations).max().orElseThrow();
        double residual = Arrays.stream(reports)
                .mapToDouble(SolveReport::relativeResidual)
                .max()
                .orElseThrow();
        return new SolveMeasurement(
                solved,
                setUp.median(),
                refresh.median(),
                solve.median(),
                iterations,
                residual,
                bytesPerCell,
                memoryRate,
                problem.figures(solutions[0]));
    }

    @Override
    public void close() {
        team.close();
    }
}
