package org.headfall.solver.linear;

/** Thrown when a linear system was not solved to the accuracy asked for; carries what was asked and what was reached. */
public final class SolveFailedException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient SolveReport report;

    /** Makes the exception of a solve that ended short of its target. */
    public SolveFailedException(SolveReport report) {
        super("linear solve: " + report.describe());
        this.report = report;
    }

    /** Returns how the solve ended. */
    public SolveReport report() {
        return report;
    }
}
