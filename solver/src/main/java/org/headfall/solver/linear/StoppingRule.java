package org.headfall.solver.linear;

/**
 * When a solve may stop: at {@code ||b - A x|| <= max(relative ||b||, absolute)} in the 2-norm or, failing that, at a number
 * of iterations. The residual is recomputed from x before it is believed, unless the rule leaves that out: the one that an
 * iteration carries along differs from it by rounding alone, which matters only to whoever needs the last digits.
 *
 * @param relative largest residual as a part of the right-hand side's norm, at least 0 and below 1
 * @param absolute largest residual in the unit of the right-hand side, at least 0
 * @param iterationLimit most iterations allowed, at least 1
 * @param recomputed whether the residual is recomputed from x
 */
public record StoppingRule(double relative, double absolute, int iterationLimit, boolean recomputed) {
    private static final int DEFAULT_ITERATION_LIMIT = 500;

    /** Checks the limits of each part. */
    public StoppingRule {
        if (!(relative >= 0 && relative < 1)) {
            throw new IllegalArgumentException("relative residual " + relative + " is not in [0, 1)");
        }
        if (!(absolute >= 0 && absolute < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("absolute residual " + absolute + " is negative or not finite");
        }
        if (iterationLimit < 1) {
            throw new IllegalArgumentException("iteration limit " + iterationLimit + " is below 1");
        }
    }

    /** Stops at a residual relative to the right-hand side. */
    public static StoppingRule relative(double relative) {
        return new StoppingRule(relative, 0, DEFAULT_ITERATION_LIMIT, true);
    }

    /** Stops at a residual in the unit of the right-hand side. */
    public static StoppingRule absolute(double absolute) {
        return new StoppingRule(0, absolute, DEFAULT_ITERATION_LIMIT, true);
    }

    /** Stops at whichever of the two residuals is reached first. */
    public static StoppingRule either(double relative, double absolute) {
        return new StoppingRule(relative, absolute, DEFAULT_ITERATION_LIMIT, true);
    }

    /** Returns the same rule with another limit on iterations. */
    public StoppingRule withIterationLimit(int limit) {
        return new StoppingRule(relative, absolute, limit, recomputed);
    }

    /** Returns the same rule without recomputing the residual. */
    public StoppingRule byRecursion() {
        return new StoppingRule(relative, absolute, iterationLimit, false);
    }

    /** Returns the largest residual norm allowed for a right-hand side of the given norm. */
    public double target(double rightHandSideNorm) {
        return Math.max(relative * rightHandSideNorm, absolute);
    }
}
