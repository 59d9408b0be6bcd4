package org.headfall.solver.flow;

import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import org.headfall.solver.linear.FivePointMatrix;
import org.headfall.solver.linear.LinearSolver;
import org.headfall.solver.linear.SolveReport;
import org.headfall.solver.linear.StoppingRule;
import org.headfall.solver.linear.WorkerTeam;
import org.jspecify.annotations.Nullable;

/**
 * The matrix of one implicit stage, {@code storage / coefficient + A} and what the sealing bed adds, with its solver.
 * Step lengths come back: what a length adds to the diagonal is kept for those used last. Preconditioners are kept by
 * rungs of a ladder and serve lengths near it as well.
 */
final class StageMatrix {

    /** Residual that rounding leaves of a right-hand side: no solve of a stage needs to try for less. */
    private static final double STAGE_TOLERANCE = 1e-14;

    private static final double UNIT_TOLERANCE = 1e-9;
    static final double TRANSFER_TOLERANCE = 1e-10;
    private static final double STEADY_TOLERANCE = 1e-12;
    private static final double DAMPING_TOLERANCE = 0.1;
    private static final double RUNGS_PER_FACTOR_OF_TWO = 2;
    private static final long BYTES_FOR_PRECONDITIONERS = 320L << 20;
    private static final int BYTES_PER_CELL = 300;

    private final FlowEquation equation;
    private final WorkerTeam team;
    private final CellLoops loops;
    private final FivePointMatrix matrix;
    private final StageReleases releases;
    private final double[] storage;
    private final double[] scaled;
    /** Solvers by rung, the one used longest ago first. */
    private final Map<Long, LinearSolver> solvers;

    private final int kept;
    private @Nullable LinearSolver solver;
    private StageReleases.@Nullable Release release;
    private double headTolerance;
    private long solves;
    private long iterations;

    StageMatrix(FlowEquation equation, double[] storage, @Nullable BedRelaxation bed, WorkerTeam team) {
        this(equation, storage, bed, team, solversThatFit(storage.length));
    }

    private StageMatrix(
            FlowEquation equation, double[] storage, @Nullable BedRelaxation bed, WorkerTeam team, int kept) {
        this.kept = kept;
        this.team = team;
        this.equation = equation;
        this.storage = storage;
        loops = new CellLoops(team, storage.length);
        releases = new StageReleases(equation.ties(), storage, bed, loops, kept > 1);
        matrix = new FivePointMatrix(
                equation.aquifer().grid().columns(),
                equation.aquifer().grid().rows(),
                equation.diagonal().clone(),
                equation.eastConductance(),
                equation.northConductance());
        scaled = new double[storage.length];
        solvers = new LinkedHashMap<>(16, 0.75f, true);
    }

    /** A matrix whose coefficients do not come back, so that one preconditioner, made anew for each, is enough. */
    static StageMatrix withOneSolver(
            FlowEquation equation, double[] storage, @Nullable BedRelaxation bed, WorkerTeam team) {
        return new StageMatrix(equation, storage, bed, team, 1);
    }

    private static int solversThatFit(int cells) {
        return (int) Math.max(2, Math.min(24, BYTES_FOR_PRECONDITIONERS / BYTES_PER_CELL / cells));
    }

    int size() {
        return storage.length;
    }

    /** Loops over the cells of the matrix, by the same threads as the solver. */
    CellLoops loops() {
        return loops;
    }

    /** The matrix as it is prepared, to be read only. */
    FivePointMatrix matrix() {
        return matrix;
    }

    /** Weight of the stage's own rate the matrix is prepared for (d); infinite for the steady state. */
    double coefficient() {
        return prepared().coefficient();
    }

    /** What storage and sealing bed give within the stage, per time and metre of fall (m²/d); not to be changed. */
    double[] release() {
        return prepared().perMetre();
    }

    private StageReleases.Release prepared() {
        return Objects.requireNonNull(release, "a coefficient must be prepared first");
    }

    boolean isPreparedFor(double coefficient) {
        return release != null && release.coefficient() == coefficient;
    }

    /** The longest coefficient of the ladder that is at most a time (d): a few serve for all times. */
    double rung(double time) {
        return Math.pow(
                2, Math.floor(RUNGS_PER_FACTOR_OF_TWO * Math.log(time) / Math.log(2)) / RUNGS_PER_FACTOR_OF_TWO);
    }

    /** Prepares for the steady state. */
    void prepareSteady() {
        prepare(Double.POSITIVE_INFINITY);
    }

    /** Prepares for implicit stages with a coefficient (d). */
    void prepare(double coefficient) {
        if (isPreparedFor(coefficient)) {
            return;
        }
        release = releases.of(coefficient);
        matrix.shiftDiagonal(equation.diagonal(), 1, release.perMetre());
        solver = null;
    }

    /** The solver for the present coefficient, made when first needed. */
    private LinearSolver solver() {
        LinearSolver present = solver;
        if (present == null) {
            present = solverOf(coefficient());
            solver = present;
        }
        return present;
    }

    private LinearSolver solverOf(double coefficient) {
        long rung = Double.isFinite(coefficient)
                ? Math.round(RUNGS_PER_FACTOR_OF_TWO * Math.log(coefficient) / Math.log(2))
                : Long.MAX_VALUE;
        LinearSolver known = solvers.get(rung);
        if (known == null) {
            known = solvers.size() < kept ? LinearSolver.forMatrix(matrix, team) : madeAnew();
            solvers.put(rung, known);
        }
        return known;
    }

    /** The solver used longest ago, set up for the present diagonal, which costs half of what another one does. */
    private LinearSolver madeAnew() {
        Iterator<LinearSolver> byAge = solvers.values().iterator();
        LinearSolver eldest = byAge.next();
        byAge.remove();
        eldest.diagonalChanged();
        return eldest;
    }

    /**
     * Sets the error of head that a solve of a stage may leave.
     *
     * @param metres error (m)
     */
    void setHeadTolerance(double metres) {
        headTolerance = metres;
    }

    /**
     * Raises or lowers all heads evenly so that no water is gained or lost in all. A solve leaves a residual far too
     * small to matter to heads; summed over many cells and steps it would still show in the water balance. What passes
     * between cells cancels in the sum. Release is summed by the change of head: in short steps it is a small difference of
     * large numbers.
     *
     * @param right right-hand side without points and without what is released (m³/d)
     * @param base head that release counts from (m)
     * @param discharges sum of what the points take (m³/d)
     * @param head heads, changed (m)
     */
    void conserve(double[] right, double[] base, double discharges, double[] head) {
        double[] ties = equation.ties();
        double[] perMetre = release();
        double gained = loops.sum((from, to) -> {
            double sum = 0;
            for (int cell = from; cell < to; cell++) {
                sum += right[cell] - ties[cell] * head[cell] - perMetre[cell] * (head[cell] - base[cell]);
            }
            return sum;
        });
        raise((gained - discharges) / prepared().tie(), head);
    }

    /**
     * Raises all heads evenly. What rounding takes from the rise, which is alike in all cells that stand alike, goes to
     * {@link LeftoverCells}.
     */
    private void raise(double rise, double[] head) {
        boolean[] active = equation.aquifer().active();
        double[] ties = equation.ties();
        double[] perMetre = release();
        double lost = loops.sum((from, to) -> {
            double sum = 0;
            for (int cell = from; cell < to; cell++) {
                double former = head[cell];
                double wanted = active[cell] ? rise : 0;
                head[cell] = former + wanted;
                sum += (ties[cell] + perMetre[cell]) * (wanted - (head[cell] - former));
            }
            return sum;
        });
        prepared().takers().take(lost, cell -> ties[cell] + perMetre[cell], head);
    }

    /**
     * Solves for heads. The residual left by a stage is one that leaves an error of head of the tolerance where all cells
     * err alike, see {@link StageReleases.Release#usualTie}.
     *
     * @param right right-hand side (m³/d)
     * @param head in: a guess; out: heads (m)
     */
    void solve(double[] right, double[] head) {
        StoppingRule rule = Double.isFinite(coefficient())
                ? StoppingRule.either(
                                STAGE_TOLERANCE, headTolerance * prepared().usualTie())
                        .byRecursion()
                : StoppingRule.relative(STEADY_TOLERANCE);
        count(solver().solve(right, head, rule));
    }

    /** Solves to a share of the right-hand side alone: for unit responses. */
    void solveUnit(double[] right, double[] response) {
        count(solver().solve(
                        right, response, StoppingRule.relative(UNIT_TOLERANCE).byRecursion()));
    }

    /** Solves for several unit responses at once until their residuals are a share of their sources. */
    void solveTransfers(double[][] rights, double[][] responses, double tolerance) {
        StoppingRule rule = StoppingRule.relative(tolerance).byRecursion();
        for (SolveReport report : solver().solveAll(rights, responses, rule)) {
            count(report);
        }
    }

    /** Replaces an error by what an implicit stage leaves of it. */
    void damp(double[] error) {
        double perDay = 1 / coefficient();
        loops.run((from, to) -> {
            for (int cell = from; cell < to; cell++) {
                scaled[cell] = perDay * storage[cell] * error[cell];
                error[cell] = 0;
            }
        });
        count(solver().solve(
                        scaled, error, StoppingRule.relative(DAMPING_TOLERANCE).byRecursion()));
    }

    private void count(SolveReport report) {
        solves++;
        iterations += report.iterations();
    }

    long solves() {
        return solves;
    }

    long iterations() {
        return iterations;
    }
}
