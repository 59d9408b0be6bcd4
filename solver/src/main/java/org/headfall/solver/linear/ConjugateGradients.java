package org.headfall.solver.linear;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;

/**
 * Preconditioned conjugate gradients (Hestenes and Stiefel 1952; Saad 2003, algorithm 9.1) for one right-hand side or
 * several, which advance side by side as long as their vectors fit into a cache.
 *
 * <p>Sums run along each row of the grid and then over the rows in order: the answer is the same bit for
 * bit for any number of threads and whichever systems are solved beside each other. A system that meets its rule by the
 * recursive residual is checked by the true one and goes on from it where that is still too large. Where that no
 * longer halves the true residual, rounding has stopped it, and the report says so.
 *
 * @param <S> vectors of a right-hand side in the form that the preconditioner takes: their precision is its choice
 */
final class ConjugateGradients<S extends KrylovSystem> implements LinearSolver {
    /** Least number of cells worth a second thread. */
    private static final int GRAIN_CELLS = 4096;
    /**
     * Most cells of systems that advance side by side. One alone is bound by computing, so that to read the matrix once for
     * several gains little; vectors that no longer fit into a cache cost more. On small grids threads meet less often for each.
     */
    private static final int SIDE_BY_SIDE_CELLS = 320_000;

    private final FivePointMatrix matrix;
    private final Preconditioner<S> preconditioner;
    private final WorkerTeam team;
    private final TiedDown tiedDown;
    private final RowParts parts;
    private final int sideBySide;
    private final List<S> workspace = new ArrayList<>();
    /** The workspace with the systems that are worked on first. */
    private final List<S> active = new ArrayList<>();

    private int activeCount;

    // Held in fields, and steps without anything of their own, so that a solve allocates nothing.
    private final WorkerTeam.RangeTask rowTask = this::rows;
    private RowStep rowStep = KrylovSystem::startRow;

    /**
     * Makes a solver.
     *
     * @param matrix the matrix
     * @param preconditioner approximate inverse of the same matrix
     * @param team threads that share the work
     * @throws SingularSystemException if a connected group of cells is not tied down
     */
    ConjugateGradients(FivePointMatrix matrix, Preconditioner<S> preconditioner, WorkerTeam team) {
        this.matrix = matrix;
        this.preconditioner = preconditioner;
        this.team = team;
        this.parts = RowParts.of(matrix.rows(), team.size(), GRAIN_CELLS / matrix.columns());
        this.sideBySide = Math.max(1, SIDE_BY_SIDE_CELLS / matrix.cells());
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
        SolveReport[] reports = new SolveReport[count];
        int groups = (count + sideBySide - 1) / sideBySide;
        for (int group = 0; group < groups; group++) {
            int from = count * group / groups;
            int to = count * (group + 1) / groups;
            SolveReport[] some = solveSideBySide(
                    Arrays.copyOfRange(rightHandSides, from, to), Arrays.copyOfRange(solutions, from, to), rule);
            System.arraycopy(some, 0, reports, from, to - from);
        }
        return reports;
    }

    private SolveReport[] solveSideBySide(double[][] rightHandSides, double[][] solutions, StoppingRule rule) {
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
            workspace.add(preconditioner.newSystem(parts.parts()));
        }
    }

    private void iterate(int count, StoppingRule rule) {
        preconditioner.prepare();
        active.clear();
        for (int l = 0; l < count; l++) {
            active.add(workspace.get(l));
        }
        activeCount = count;
        forRows(KrylovSystem::startRow);
        forEachSystem(KrylovSystem::start);
        forRows(KrylovSystem::settleRow);
        keepUnfinished(rule);
        while (activeCount > 0) {
            preconditioner.apply(active, activeCount);
            forEachSystem(KrylovSystem::conjugate);
            forRows((system, row, part) -> system.directionRow(row));
            forRows(KrylovSystem::curvatureRow);
            forEachSystem(KrylovSystem::chooseStep);
            forRows(KrylovSystem::updateRow);
            forEachSystem(KrylovSystem::advance);
            checkTrueResiduals(rule);
            keepUnfinished(rule);
        }
    }

    /** Recomputes the residual of each system whose recursive residual has arrived. */
    private void checkTrueResiduals(StoppingRule rule) {
        int all = activeCount;
        int arrived = 0;
        for (int l = 0; l < all; l++) {
            if (active.get(l).hasArrived(rule)) {
                Collections.swap(active, l, arrived++);
            }
        }
        activeCount = arrived;
        forEachSystem(KrylovSystem::prepareRestart);
        forRows(KrylovSystem::startRow);
        forEachSystem(KrylovSystem::start);
        activeCount = all;
    }

    private void keepUnfinished(StoppingRule rule) {
        int kept = 0;
        for (int l = 0; l < activeCount; l++) {
            if (!active.get(l).isFinished(rule)) {
                Collections.swap(active, l, kept++);
            }
        }
        activeCount = kept;
    }

    /** What is done to a row of a system, by the thread that has the part in which it lies. */
    @FunctionalInterface
    private interface RowStep {
        void apply(KrylovSystem system, int row, int part);
    }

    private void forRows(RowStep step) {
        if (activeCount > 0) {
            rowStep = step;
            team.split(parts.parts(), 1, rowTask);
        }
    }

    private interface SystemStep {
        void apply(KrylovSystem system);
    }

    private void forEachSystem(SystemStep step) {
        for (int l = 0; l < activeCount; l++) {
            step.apply(active.get(l));
        }
    }

    private void rows(int fromPart, int toPart) {
        for (int part = fromPart; part < toPart; part++) {
            for (int row = parts.first(part); row < parts.first(part + 1); row++) {
                for (int l = 0; l < activeCount; l++) {
                    rowStep.apply(active.get(l), row, part);
                }
            }
        }
    }
}
