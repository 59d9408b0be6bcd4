package org.headfall.solver.linear;

import java.util.Arrays;
import org.ejml.data.DMatrixSparseTriplet;

/** Direct solver by sparse Cholesky factors, for small grids: cells are numbered along the shorter side of the grid. */
public final class DirectSolver implements LinearSolver {
    /** Part of the residual that a refinement may leave and be worth repeating. */
    private static final double SLOWEST_REFINEMENT = 0.9;

    private final FivePointMatrix matrix;
    private final TiedDown tiedDown;
    private final double[] residual;
    private SparseCholesky factors;

    /**
     * Factors a matrix.
     *
     * @throws SingularSystemException if a connected group of cells is not tied down
     */
    public DirectSolver(FivePointMatrix matrix) {
        this.matrix = matrix;
        this.residual = new double[matrix.cells()];
        this.tiedDown = new TiedDown(matrix);
        tiedDown.require();
        this.factors = factor();
    }

    @Override
    public FivePointMatrix matrix() {
        return matrix;
    }

    @Override
    public void diagonalChanged() {
        tiedDown.require();
        factors = factor();
    }

    private SparseCholesky factor() {
        int cells = matrix.cells();
        DMatrixSparseTriplet entries = new DMatrixSparseTriplet(cells, cells, 5 * cells);
        for (int k = 0; k < cells; k++) {
            int unknown = unknown(k);
            entries.addItem(unknown, unknown, matrix.diagonal()[k]);
            addCoupling(entries, k, k + 1, matrix.east()[k]);
            addCoupling(entries, k, k + matrix.columns(), matrix.north()[k]);
        }
        return new SparseCholesky(entries);
    }

    private void addCoupling(DMatrixSparseTriplet entries, int cell, int neighbour, double coupling) {
        if (coupling > 0) {
            entries.addItem(unknown(cell), unknown(neighbour), -coupling);
            entries.addItem(unknown(neighbour), unknown(cell), -coupling);
        }
    }

    private int unknown(int cell) {
        int columns = matrix.columns();
        return columns <= matrix.rows() ? cell : cell % columns * matrix.rows() + cell / columns;
    }

    @Override
    public SolveReport[] solveAll(double[][] rightHandSides, double[][] solutions, StoppingRule rule) {
        SystemChecks.require(matrix, rightHandSides, solutions);
        SolveReport[] reports = new SolveReport[rightHandSides.length];
        for (int l = 0; l < reports.length; l++) {
            reports[l] = solve(rightHandSides[l], solutions[l], rule);
        }
        return reports;
    }

    /**
     * Solves by the factors, then refines against the matrix as it is now, which may have changed since they were made.
     * The starting guess is not used.
     */
    @Override
    public SolveReport solve(double[] rightHandSide, double[] solution, StoppingRule rule) {
        SystemChecks.require(matrix, rightHandSide, solution);
        double norm = norm(rightHandSide);
        double target = rule.target(norm);
        Arrays.fill(solution, 0);
        addSolution(rightHandSide, solution);
        double reached = residualNorm(rightHandSide, solution);
        double before = Double.POSITIVE_INFINITY;
        while (reached > target && reached < SLOWEST_REFINEMENT * before) {
            before = reached;
            addSolution(residual, solution);
            reached = residualNorm(rightHandSide, solution);
        }
        return report(norm, reached, target, solution);
    }

    private SolveReport report(double norm, double reached, double target, double[] solution) {
        if (reached <= target) {
            return new SolveReport(SolveStatus.CONVERGED, 0, norm, reached, target);
        }
        if (reached <= matrix.residualRounding(solution)) {
            return new SolveReport(SolveStatus.ROUNDING_LIMIT, 0, norm, reached, target);
        }
        throw new SolveFailedException(new SolveReport(SolveStatus.ITERATION_LIMIT, 0, norm, reached, target));
    }

    private void addSolution(double[] rightHandSide, double[] solution) {
        double[] input = factors.rightHandSide();
        for (int k = 0; k < solution.length; k++) {
            input[unknown(k)] = rightHandSide[k];
        }
        double[] output = factors.solve();
        for (int k = 0; k < solution.length; k++) {
            solution[k] += output[unknown(k)];
        }
    }

    private double residualNorm(double[] rightHandSide, double[] solution) {
        matrix.residual(rightHandSide, solution, residual);
        return norm(residual);
    }

    private static double norm(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value * value;
        }
        return Math.sqrt(sum);
    }
}
