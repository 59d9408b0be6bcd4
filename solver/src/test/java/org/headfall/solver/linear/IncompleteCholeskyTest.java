package org.headfall.solver.linear;

final class IncompleteCholeskyTest extends LinearSolverContract {
    @Override
    LinearSolver solver(FivePointMatrix matrix) {
        return new ConjugateGradients(matrix, new IncompleteCholesky(matrix));
    }
}
