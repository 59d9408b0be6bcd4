package org.headfall.solver.linear;

/** How a solve ended. */
public enum SolveStatus {
    /** The residual, recomputed from the answer unless the rule left that out, is within the stopping rule. */
    CONVERGED,
    /** The residual is above the stopping rule but no larger than what rounding in {@code A x} leaves in double precision. */
    ROUNDING_LIMIT,
    /** The iterations allowed were used up, or brought no more progress, above the level of rounding. */
    ITERATION_LIMIT
}
