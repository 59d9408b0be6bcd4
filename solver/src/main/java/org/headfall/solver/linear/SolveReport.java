package org.headfall.solver.linear;

/**
 * How a solve ended, with the residual recomputed from the answer, or as the iteration carried it along where the rule said
 * {@link StoppingRule#byRecursion}: that differs by rounding.
 *
 * @param status how it ended
 * @param iterations iterations used, 0 for a direct solve
 * @param rightHandSideNorm 2-norm of the right-hand side
 * @param residualNorm 2-norm of {@code b - A x} at the end, recomputed from x unless the rule left that out
 * @param targetNorm residual norm asked for
 */
public record SolveReport(
        SolveStatus status, int iterations, double rightHandSideNorm, double residualNorm, double targetNorm) {

    /** Returns the residual as a part of the right-hand side's norm, 0 for a right-hand side of zero solved exactly. */
    public double relativeResidual() {
        return residualNorm == 0 ? 0 : residualNorm / rightHandSideNorm;
    }

    /** Returns one sentence with both numbers, what was asked and what was reached. */
    public String describe() {
        return status + " after " + iterations + " iterations: residual norm " + residualNorm + ", asked for "
                + targetNorm + ", right-hand side norm " + rightHandSideNorm;
    }
}
