package org.headfall.solver.flow;

import java.util.Arrays;
import java.util.List;
import java.util.function.IntConsumer;
import java.util.stream.IntStream;
import org.headfall.solver.linear.WorkerTeam;
import org.headfall.solver.nearfield.CellWeights;
import org.jspecify.annotations.Nullable;

/**
 * Drawdown of all cells by a unit source at every place in Laplace space, for one real value of the Laplace
 * variable after the other. The matrix is that of an implicit stage whose coefficient is the inverse of the shift. As long as
 * a solution is local, it is solved for around its source only ({@link LocalSolve}).
 */
final class ShiftedSolves {

    /** Sources solved for side by side: more take memory and are no faster. */
    private static final int LANES = 6;

    private final List<CellWeights> sources;
    private final double tolerance;
    private final WorkerTeam team;
    private final StageMatrix matrix;
    private final double[] storage;
    private final @Nullable BedRelaxation bed;
    private final LocalSolve[] local;
    private final double[][] drawdown;
    private final float[][] former;
    private final double[][] right;
    private final double[] weight;
    private double lastShift = Double.POSITIVE_INFINITY;
    private int solved;

    ShiftedSolves(FlowProblem problem, List<CellWeights> sources, WorkerTeam team) {
        this(problem, sources, StageMatrix.TRANSFER_TOLERANCE, team);
    }

    /** Solves that leave residuals of a share of the sources. */
    ShiftedSolves(FlowProblem problem, List<CellWeights> sources, double tolerance, WorkerTeam team) {
        this.sources = sources;
        this.tolerance = tolerance;
        this.team = team;
        FlowEquation equation = new FlowEquation(problem);
        int cells = equation.size();
        storage = equation.storage().clone();
        bed = BedRelaxation.of(problem);
        if (bed != null) {
            bed.addFastStorage(storage);
        }
        matrix = StageMatrix.withOneSolver(equation, storage, bed, team);
        local = sources.stream()
                .map(source -> new LocalSolve(problem.aquifer().grid(), source))
                .toArray(LocalSolve[]::new);
        drawdown = new double[sources.size()][cells];
        former = new float[sources.size()][cells];
        right = new double[Math.min(LANES, sources.size())][cells];
        weight = new double[cells];
    }

    long solves() {
        return matrix.solves()
                + Arrays.stream(local).mapToLong(LocalSolve::solves).sum();
    }

    long iterations() {
        return matrix.iterations()
                + Arrays.stream(local).mapToLong(LocalSolve::iterations).sum();
    }

    /** Runs a task for each of some sources, shared among threads. */
    void forSources(int count, IntConsumer task) {
        team.split(count, 1, (from, to) -> IntStream.range(from, to).forEach(task));
    }

    /** Loops over all cells, by the same threads as the solver. */
    CellLoops loops() {
        return matrix.loops();
    }

    /**
     * Solves for all sources.
     *
     * @param shift the Laplace variable (1/d), zero for the steady state. Series of falling shifts are quickest: each solution
     *     begins with those before
     */
    void solve(double shift) {
        if (shift >= lastShift) {
            startAnew();
        }
        if (shift > 0) {
            matrix.prepare(1 / shift);
        } else {
            matrix.prepareSteady();
        }
        boolean[] done = new boolean[local.length];
        if (shift > 0) {
            double stretch = solved == 0 ? 1 : Math.sqrt(lastShift / shift);
            forSources(local.length, source -> done[source] = solveLocally(source, stretch));
        }
        solveWidely(
                IntStream.range(0, done.length).filter(source -> !done[source]).toArray());
        lastShift = shift;
        solved++;
        matrix.loops().run((from, to) -> {
            System.arraycopy(storage, from, weight, from, to - from);
            if (bed != null) {
                bed.addStorage(shift, weight, from, to);
            }
        });
    }

    private void startAnew() {
        solved = 0;
        for (int source = 0; source < local.length; source++) {
            local[source].startAnew();
            Arrays.fill(drawdown[source], 0);
            Arrays.fill(former[source], 0);
        }
    }

    private boolean solveLocally(int source, double stretch) {
        return local[source].solve(matrix.matrix(), stretch, tolerance, drawdown[source], former[source]);
    }

    private void solveWidely(int[] some) {
        for (int first = 0; first < some.length; first += LANES) {
            int[] group = Arrays.copyOfRange(some, first, Math.min(some.length, first + LANES));
            double[][] solutions = new double[group.length][];
            for (int lane = 0; lane < group.length; lane++) {
                int source = group[lane];
                local[source].takeWhole();
                solutions[lane] = drawdown[source];
                guess(drawdown[source], former[source]);
                Arrays.fill(right[lane], 0);
                sources.get(source).add(1, right[lane]);
            }
            matrix.solveTransfers(Arrays.copyOf(right, group.length), solutions, tolerance);
        }
    }

    /** Drawdown is nearly straight over the logarithm of the shift: the next guess continues the last two solutions. */
    private void guess(double[] last, float[] beforeLast) {
        matrix.loops().run((from, to) -> {
            for (int cell = from; cell < to; cell++) {
                double now = last[cell];
                last[cell] = solved < 2 ? now : 2 * now - beforeLast[cell];
                beforeLast[cell] = (float) now;
            }
        });
    }

    /** Solution for a source; changed by the next solve. */
    double[] drawdown(int source) {
        return drawdown[source];
    }

    /** Rectangle outside of which the solution for a source is zero. */
    CellWindow window(int source) {
        return local[source].window();
    }

    /**
     * Adds the products {@code h_i^T W h_j}, with W what aquifer and bed release at the shift.
     *
     * @param causes number of sources, from the first, whose products with all others are wanted
     * @param falls receives the products
     * @param shift number of the shift in the rows
     */
    void addFalls(int causes, PairValues falls, int shift) {
        CellWindow[] windows =
                IntStream.range(0, local.length).mapToObj(this::window).toArray(CellWindow[]::new);
        new SolutionProducts(drawdown, windows, weight, causes).addTo(falls, shift, team);
    }
}
