package org.headfall.solver.linear;

/**
 * Solves {@code A x = b} for one symmetric positive definite matrix, set up once and used many times. Not safe for use by
 * several threads at once.
 */
public interface LinearSolver {
    /** Largest number of cells for which {@link #forMatrix} takes the direct solver. */
    int DIRECT_LIMIT = 1000;

    /**
     * Returns the solver that suits a matrix: direct on a small grid, else conjugate gradients with multigrid.
     *
     * @param matrix the matrix
     * @param team threads that share the work
     * @throws SingularSystemException if a connected group of cells is not tied down
     */
    static LinearSolver forMatrix(FivePointMatrix matrix, WorkerTeam team) {
        return matrix.cells() <= DIRECT_LIMIT ? new DirectSolver(matrix) : new MultigridSolver(matrix, team);
    }

    /** Returns the matrix this solver was made for. */
    FivePointMatrix matrix();

    /**
     * Makes factors or multigrid anew for the matrix's present diagonal. Answers are for the present diagonal even without
     * it, but after changes by more than a factor of two or so take longer, or fail.
     *
     * @throws SingularSystemException if a connected group of cells is no longer tied down
     */
    void diagonalChanged();

    /**
     * Solves for one right-hand side.
     *
     * @param rightHandSide b, not modified
     * @param solution in: starting guess; out: answer
     * @param rule when to stop
     * @return how it ended: converged, or stopped by rounding in double precision
     * @throws SolveFailedException if iterations ran out; {@code solution} then holds the last iterate
     * @throws IllegalArgumentException if b or the guess is not finite, or a length is not the number of cells
     */
    SolveReport solve(double[] rightHandSide, double[] solution, StoppingRule rule);

    /**
     * Solves for several right-hand sides, side by side where that is quicker than one after the other. Each answer is bit
     * for bit what {@link #solve} gives.
     *
     * @param rightHandSides one array a system, not modified
     * @param solutions in: starting guesses; out: answers
     * @param rule when to stop, for each system by itself
     * @return how each ended
     * @throws SolveFailedException if iterations ran out for any of them
     */
    SolveReport[] solveAll(double[][] rightHandSides, double[][] solutions, StoppingRule rule);
}
