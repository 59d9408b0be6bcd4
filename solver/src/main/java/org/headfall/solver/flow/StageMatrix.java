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
 * Step lengths come from a ladder, so preconditioners are kept by their rung and serve lengths near it as well.
 */
final class StageMatrix {

    private static final double RELATIVE_TOLERANCE = 1e-9;
    private static final double TRANSFER_TOLERANCE = 1e-10;
    private static final double STEADY_TOLERANCE = 1e-12;
    private static final double DAMPING_TOLERANCE = 0.1;
    private static final double ROUNDING = 1e-12;
    private static final double RUNGS_PER_FACTOR_OF_TWO = 2;
    private static final long BYTES_FOR_PRECONDITIONERS = 320L << 20;
    private static final int BYTES_PER_CELL = 300;

    private final FlowEquation equation;
    private final WorkerTeam team;
    private final double[] storage;
    private final @Nullable BedRelaxation bed;
    private final FivePointMatrix matrix;
    private final double[] diagonal;
    private final double[] scaled;
    /** Solvers by rung, the one used longest ago first. */
    private final Map<Long, LinearSolver> solvers;

    private final int kept;
    private final double[] couplings;
    private @Nullable LinearSolver solver;
    private double coefficient = Double.NaN;
    private double headTolerance;
    private double tie;
    private double usualTie;
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
        this.bed = bed;
        diagonal = equation.diagonal().clone();
        matrix = new FivePointMatrix(
                equation.aquifer().grid().columns(),
                equation.aquifer().grid().rows(),
                diagonal.clone(),
                equation.eastConductance(),
                equation.northConductance());
        scaled = new double[diagonal.length];
        solvers = new LinkedHashMap<>(16, 0.75f, true);
        couplings = equation.couplings();
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
        return diagonal.length;
    }

    /** Weight of the stage's own rate the matrix is prepared for (d); infinite for the steady state. */
    double coefficient() {
        return coefficient;
    }

    /** The longest coefficient of the ladder that is at most a time (d): a few serve for all times. */
    double rung(double time) {
        return Math.pow(
                2, Math.floor(RUNGS_PER_FACTOR_OF_TWO * Math.log(time) / Math.log(2)) / RUNGS_PER_FACTOR_OF_TWO);
    }

    /** Prepares for the steady state. */
    void prepareSteady() {
        prepareFor(Double.POSITIVE_INFINITY);
    }

    /** Prepares for implicit stages with a coefficient (d). */
    void prepare(double stageCoefficient) {
        if (stageCoefficient != coefficient) {
            prepareFor(stageCoefficient);
        }
    }

    private void prepareFor(double stageCoefficient) {
        coefficient = stageCoefficient;
        System.arraycopy(equation.diagonal(), 0, diagonal, 0, diagonal.length);
        if (Double.isFinite(coefficient)) {
            double perDay = 1 / coefficient;
            for (int cell = 0; cell < diagonal.length; cell++) {
                diagonal[cell] += perDay * storage[cell];
            }
            if (bed != null) {
                bed.addToDiagonal(coefficient, diagonal);
            }
        }
        matrix.replaceDiagonal(diagonal);
        findTies();
        long rung = Double.isFinite(coefficient)
                ? Math.round(RUNGS_PER_FACTOR_OF_TWO * Math.log(coefficient) / Math.log(2))
                : Long.MAX_VALUE;
        solver = solvers.get(rung);
        if (solver == null) {
            solver = solvers.size() < kept ? LinearSolver.forMatrix(matrix, team) : madeAnew();
            solvers.put(rung, solver);
        }
    }

    /** What storage, leakage and boundaries give for a fall of head: in all, and by the harmonic mean of the cells. */
    private void findTies() {
        boolean[] active = equation.aquifer().active();
        double inverse = 0;
        int tied = 0;
        tie = 0;
        for (int cell = 0; cell < diagonal.length; cell++) {
            double own = diagonal[cell] - couplings[cell];
            if (active[cell] && own > ROUNDING * diagonal[cell]) {
                tie += own;
                inverse += 1 / own;
                tied++;
            }
        }
        usualTie = tied == 0 ? 0 : tied / inverse * Math.sqrt(tied);
    }

    /** The solver used longest ago, set up for the present diagonal, which costs half of what another one does. */
    private LinearSolver madeAnew() {
        Iterator<LinearSolver> byAge = solvers.values().iterator();
        LinearSolver eldest = byAge.next();
        byAge.remove();
        eldest.diagonalChanged();
        return eldest;
    }

    private LinearSolver prepared() {
        return Objects.requireNonNull(solver, "a coefficient must be prepared first");
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
     * Norm of a residual that leaves an error of head of the tolerance where all cells err alike. The harmonic mean heeds
     * small cells; uneven errors of the same size leave larger residuals.
     */
    private double absoluteTolerance() {
        return headTolerance * usualTie;
    }

    /**
     * Raises or lowers all heads evenly so that no water is gained or lost in all. A solve leaves a residual far too
     * small to matter to heads; summed over many cells and steps it would still show in the water balance.
     *
     * @param residual what the heads leave (m³/d)
     * @param head heads, changed (m)
     */
    void conserve(double[] residual, double[] head) {
        boolean[] active = equation.aquifer().active();
        double sum = 0;
        for (int cell = 0; cell < residual.length; cell++) {
            sum += active[cell] ? residual[cell] : 0;
        }
        double shift = sum / tie;
        for (int cell = 0; cell < head.length; cell++) {
            head[cell] += active[cell] ? shift : 0;
        }
    }

    /** {@code residual = right - matrix head} (m³/d). */
    void residual(double[] right, double[] head, double[] residual) {
        matrix.residual(right, head, residual);
    }

    /** Solves for a correction of head (m) from a residual (m³/d). */
    void solve(double[] right, double[] correction) {
        boolean steady = !Double.isFinite(coefficient);
        double relative = steady ? STEADY_TOLERANCE : RELATIVE_TOLERANCE;
        count(prepared().solve(right, correction, StoppingRule.either(relative, steady ? 0 : absoluteTolerance())));
    }

    /** Solves to a share of the right-hand side alone: for unit responses. */
    void solveUnit(double[] right, double[] response) {
        count(prepared().solve(right, response, StoppingRule.relative(RELATIVE_TOLERANCE)));
    }

    /** Solves for several unit responses at once, as exactly as differences between matrices need it. */
    void solveTransfers(double[][] rights, double[][] responses) {
        for (SolveReport report : prepared().solveAll(rights, responses, StoppingRule.relative(TRANSFER_TOLERANCE))) {
            count(report);
        }
    }

    /** Replaces an error by what an implicit stage leaves of it. */
    void damp(double[] error) {
        for (int cell = 0; cell < error.length; cell++) {
            scaled[cell] = storage[cell] / coefficient * error[cell];
            error[cell] = 0;
        }
        count(prepared().solve(scaled, error, StoppingRule.relative(DAMPING_TOLERANCE)));
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
