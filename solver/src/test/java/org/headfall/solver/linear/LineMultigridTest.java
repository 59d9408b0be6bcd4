package org.headfall.solver.linear;

final class LineMultigridTest extends LinearSolverContract {
    @Override
    LinearSolver solver(FivePointMatrix matrix) {
        WorkerTeam team = new WorkerTeam(1);
        return new ConjugateGradients<>(matrix, new LineMultigrid(matrix, team), team);
    }
}
