package org.headfall.solver.linear;

import java.util.ArrayList;
import java.util.List;

/**
 * Preconditioned conjugate gradients (Hestenes and Stiefel 1952; Saad 2003, algorithm 9.1) in double precision for one or
 * several right-hand sides that advance side by side, so that the matrix and the preconditioner are read once for all.
 *
 * <p>Sums run along each row of the grid and then over the rows in order: the answer is the same bit for
 * bit for any number of threads and whichever systems are solved beside each other. A system that meets its rule by the
 * recursive residual is checked by the true one and restarted from it where that is still too large. Where a restart no
 * longer halves the true residual, rounding has stopped it, and the report says so.
 */
public final class ConjugateGradients implements LinearSolver {
    /** Least number of cells worth a second thread. */
    private static final int GRAIN_CELLS = 4096;

    private final FivePointMatrix matrix;
    private final Preconditioner preconditioner;
    private final WorkerTeam team;
    private final TiedDown tiedDown;
    private final int grain;
    private final List<KrylovSystem> workspace = new ArrayList<>();
    private KrylovSystem[] active = new KrylovSystem[0];
    private double[][] residuals = new double[0][];
    private double[][] corrections = new double[0][];
    private double[][] products = new double[0][];
    private double[] norms = new double[0];
    private int activeCount;

    // Held in fields so that a solve allocates nothing.
    private final WorkerTeam.RangeTask startTask = this::startRows;
    private final WorkerTeam.RangeTask directionTask = this::directionRows;
    private final WorkerTeam.RangeTask curvatureTask = this::curvatureRows;
    private final WorkerTeam.RangeTask updateTask = this::updateRows;

    /** Makes a solver that works in the calling thread; see {@link #ConjugateGradients(FivePointMatrix, Preconditioner, WorkerTeam)}. */
    public ConjugateGradients(FivePointMatrix matrix, Preconditioner preconditioner) {
        this(matrix, preconditioner, new WorkerTeam(1));
    }

    /**
     * Makes a solver.
     *
     * @param matrix the matrix
     * @param preconditioner approximate inverse of the same matrix
     * @param team threads that share the work
     * @throws SingularSystemException if a connected group of cells is not tied down
     */
    public ConjugateGradients(FivePointMatrix matrix, Preconditioner preconditioner, WorkerTeam team) {
        this.matrix = matrix;
        this.preconditioner = preconditioner;
        this.team = team;
        this.grain = Math.max(1, GRAIN_CELLS / matrix.columns());
        this.tiedDown = new TiedDown(matrix);
        tiedDown.require();
    }

    @Override
    public FivePointMatrix matrix() {
        return matrix;
    }

    @Override
    public void diagonalChanged() {
        tiedDown.require();
        preconditioner.diagonalChanged();
    }

    @Override
    public SolveReport solve(double[] rightHandSide, double[] solution, StoppingRule rule) {
        SystemChecks.require(matrix, rightHandSide, solution);
        reserve(1);
        workspace.get(0).assign(rightHandSide, solution);
        iterate(1, rule);
        return workspace.get(0).report(rule);
    }

    @Override
    public SolveReport[] solveAll(double[][] rightHandSides, double[][] solutions, StoppingRule rule) {
        SystemChecks.require(matrix, rightHandSides, solutions);
        int count = rightHandSides.length;
        reserve(count);
        for (int l = 0; l < count; l++) {
            workspace.get(l).assign(rightHandSides[l], solutions[l]);
        }
        iterate(count, rule);
        SolveReport[] reports = new SolveReport[count];
        for (int l = 0; l < count; l++) {
            reports[l] = workspace.get(l).report(rule);
        }
        return reports;
    }

    private void reserve(int count) {
        while (workspace.size() < count) {
            workspace.add(new KrylovSystem(matrix));
        }
        if (active.length < count) {
            active = new KrylovSystem[count];
            residuals = new double[count][];
            corrections = new double[count][];
            products = new double[count][];
            norms = new double[count];
        }
    }

    private void iterate(int count, StoppingRule rule) {
        for (int l = 0; l < count; l++) {
            active[l] = workspace.get(l);
        }
        activeCount = count;
        forRows(startTask);
        forEachSystem(KrylovSystem::start);
        keepUnfinished(rule);
        while (activeCount > 0) {
            precondition();
            forEachSystem(KrylovSystem::conjugate);
            forRows(directionTask);
            forRows(curvatureTask);
            forEachSystem(KrylovSystem::chooseStep);
            forRows(updateTask);
            forEachSystem(KrylovSystem::advance);
            checkTrueResiduals(rule);
            keepUnfinished(rule);
        }
    }

    private void precondition() {
        for (int l = 0; l < activeCount; l++) {
            residuals[l] = active[l].residual;
            corrections[l] = active[l].correction;
            products[l] = active[l].rowSums;
            norms[l] = active[l].residualNorm();
        }
        preconditioner.apply(residuals, norms, corrections, products, activeCount);
    }

    /** Recomputes the residual of each system whose recursive residual has arrived. */
    private void checkTrueResiduals(StoppingRule rule) {
        int all = activeCount;
        int arrived = 0;
        for (int l = 0; l < all; l++) {
            if (active[l].hasArrived(rule)) {
                KrylovSystem swapped = active[arrived];
                active[arrived++] = active[l];
                active[l] = swapped;
            }
        }
        activeCount = arrived;
        forRows(startTask);
        forEachSystem(KrylovSystem::start);
        activeCount = all;
    }

    private void keepUnfinished(StoppingRule rule) {
        int kept = 0;
        for (int l = 0; l < activeCount; l++) {
            if (!active[l].isFinished(rule)) {
                active[kept++] = active[l];
            }
        }
        activeCount = kept;
    }

    private void forRows(WorkerTeam.RangeTask task) {
        if (activeCount > 0) {
            team.split(matrix.rows(), grain, task);
        }
    }

    private interface SystemStep {
        void apply(KrylovSystem system);
    }

    private void forEachSystem(SystemStep step) {
        for (int l = 0; l < activeCount; l++) {
            step.apply(active[l]);
        }
    }

    private void startRows(int from, int to) {
        for (int row = from; row < to; row++) {
            for (int l = 0; l < activeCount; l++) {
                active[l].startRow(row);
            }
        }
    }

    private void directionRows(int from, int to) {
        for (int row = from; row < to; row++) {
            for (int l = 0; l < activeCount; l++) {
                active[l].directionRow(row);
            }
        }
    }

    private void curvatureRows(int from, int to) {
        for (int row = from; row < to; row++) {
            for (int l = 0; l < activeCount; l++) {
                active[l].curvatureRow(row);
            }
        }
    }

    private void updateRows(int from, int to) {
        for (int row = from; row < to; row++) {
            for (int l = 0; l < activeCount; l++) {
                active[l].updateRow(row);
            }
        }
    }
}
