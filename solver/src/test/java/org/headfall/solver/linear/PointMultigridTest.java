package org.headfall.solver.linear;

final class PointMultigridTest extends LinearSolverContract {
    @Override
    LinearSolver solver(FivePointMatrix matrix) {
        WorkerTeam team = new WorkerTeam(1);
        return new ConjugateGradients(matrix, new PointMultigrid(matrix, team), team);
    }
}
