package org.headfall.solver.linear;

/**
 * Conjugate gradients with the quick multigrid ({@link PointMultigrid}) where the couplings are balanced, and with the
 * robust one ({@link LineMultigrid}) elsewhere. Should the quick one ever fall short, the system is solved with the robust
 * one from where the quick one left off, and so are all later ones.
 */
public final class MultigridSolver implements LinearSolver {
    /** Iterations after which the quick multigrid counts as the wrong choice; the robust one needs no more than 25. */
    private static final int QUICK_ITERATION_LIMIT = 60;

    private final FivePointMatrix matrix;
    private final WorkerTeam team;
    private LinearSolver solver;
    private boolean quick;

    /**
     * Chooses and sets up.
     *
     * @param matrix the matrix
     * @param team threads that share the work
     * @throws SingularSystemException if a connected group of cells is not tied down
     */
    public MultigridSolver(FivePointMatrix matrix, WorkerTeam team) {
        this(matrix, team, new CouplingBalance(matrix).suitsPoints());
    }

    /** Sets up the quick or the robust multigrid without looking at the matrix. */
    MultigridSolver(FivePointMatrix matrix, WorkerTeam team, boolean quick) {
        this.matrix = matrix;
        this.team = team;
        this.quick = quick;
        this.solver = quick
                ? new ConjugateGradients<>(matrix, new PointMultigrid(matrix, team), team)
                : new ConjugateGradients<>(matrix, new LineMultigrid(matrix, team), team);
    }

    /** Whether the quick multigrid is in use. */
    public boolean isQuick() {
        return quick;
    }

    @Override
    public FivePointMatrix matrix() {
        return matrix;
    }

    @Override
    public void diagonalChanged() {
        solver.diagonalChanged();
    }

    @Override
    public SolveReport solve(double[] rightHandSide, double[] solution, StoppingRule rule) {
        if (quick && rule.iterationLimit() > QUICK_ITERATION_LIMIT) {
            try {
                return solver.solve(rightHandSide, solution, rule.withIterationLimit(QUICK_ITERATION_LIMIT));
            } catch (SolveFailedException tooSlow) {
                takeRobust();
            }
        }
        return solver.solve(rightHandSide, solution, rule);
    }

    @Override
    public SolveReport[] solveAll(double[][] rightHandSides, double[][] solutions, StoppingRule rule) {
        if (quick && rule.iterationLimit() > QUICK_ITERATION_LIMIT) {
            try {
                return solver.solveAll(rightHandSides, solutions, rule.withIterationLimit(QUICK_ITERATION_LIMIT));
            } catch (SolveFailedException tooSlow) {
                takeRobust();
            }
        }
        return solver.solveAll(rightHandSides, solutions, rule);
    }

    private void takeRobust() {
        quick = false;
        solver = new ConjugateGradients<>(matrix, new LineMultigrid(matrix, team), team);
    }
}
