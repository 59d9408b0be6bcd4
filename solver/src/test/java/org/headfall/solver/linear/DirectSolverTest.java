package org.headfall.solver.linear;

final class DirectSolverTest extends LinearSolverContract {
    @Override
    boolean iterates() {
        return false;
    }

    @Override
    LinearSolver solver(FivePointMatrix matrix) {
        return new DirectSolver(matrix);
    }
}
