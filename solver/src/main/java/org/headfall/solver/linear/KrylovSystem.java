package org.headfall.solver.linear;

/** The vectors and scalars of one right-hand side inside {@link ConjugateGradients}; reused from solve to solve. */
final class KrylovSystem {
    /** The recursive residual carries no information this far below the true residual it started from. */
    private static final double RECURSION_DEPTH = 1e-14;

    final double[] residual;
    final double[] correction;
    private final FivePointMatrix matrix;
    private final double[] direction;
    private final double[] image;
    private final double[] partialSums;
    private final double[] rightHandSidePartialSums;
    private double[] rightHandSide = {};
    private double[] solution = {};
    private double rightHandSideNorm;
    private double residualNorm;
    private double startNorm;
    private double product;
    private double ratio;
    private double step;
    private int iterations;
    private int starts;
    private boolean residualIsTrue;
    private boolean stalled;

    KrylovSystem(FivePointMatrix matrix, int blocks) {
        int cells = matrix.cells();
        this.matrix = matrix;
        this.residual = new double[cells];
        this.correction = new double[cells];
        this.direction = new double[cells];
        this.image = new double[cells];
        this.partialSums = new double[blocks];
        this.rightHandSidePartialSums = new double[blocks];
    }

    void assign(double[] newRightHandSide, double[] newSolution) {
        rightHandSide = newRightHandSide;
        solution = newSolution;
        startNorm = Double.POSITIVE_INFINITY;
        iterations = 0;
        starts = 0;
        stalled = false;
    }

    /** True residual of a block, and its part of both norms. */
    void startBlock(int block, int from, int to) {
        matrix.residual(rightHandSide, solution, residual, from, to);
        double residualSum = 0;
        double rightHandSideSum = 0;
        for (int k = from; k < to; k++) {
            residualSum += residual[k] * residual[k];
            rightHandSideSum += rightHandSide[k] * rightHandSide[k];
        }
        partialSums[block] = residualSum;
        rightHandSidePartialSums[block] = rightHandSideSum;
    }

    /** Begins, or begins again, from the true residual. */
    void start() {
        rightHandSideNorm = Math.sqrt(sum(rightHandSidePartialSums));
        residualNorm = Math.sqrt(sum(partialSums));
        residualIsTrue = true;
        stalled = !(residualNorm <= 0.5 * startNorm);
        startNorm = residualNorm;
        product = 0;
        starts++;
    }

    /** A block's part of (r, z). */
    void residualProductBlock(int block, int from, int to) {
        double sum = 0;
        for (int k = from; k < to; k++) {
            sum += residual[k] * correction[k];
        }
        partialSums[block] = sum;
    }

    /** Ratio that makes the next direction conjugate to the last one; zero just after a start. */
    void conjugate() {
        double former = product;
        product = sum(partialSums);
        ratio = former > 0 ? product / former : 0;
    }

    /** p = z + ratio p. */
    void directionBlock(int from, int to) {
        if (ratio == 0) {
            System.arraycopy(correction, from, direction, from, to - from);
            return;
        }
        for (int k = from; k < to; k++) {
            direction[k] = correction[k] + ratio * direction[k];
        }
    }

    /** q = A p and a block's part of (p, q). */
    void curvatureBlock(int block, int from, int to) {
        matrix.multiply(direction, image, from, to);
        double sum = 0;
        for (int k = from; k < to; k++) {
            sum += direction[k] * image[k];
        }
        partialSums[block] = sum;
    }

    /** Length of the step; zero where rounding has left no descent, which the next true residual then shows. */
    void chooseStep() {
        double curvature = sum(partialSums);
        step = curvature > 0 && product > 0 ? product / curvature : 0;
    }

    /** x = x + step p, r = r - step q, and a block's part of (r, r). */
    void updateBlock(int block, int from, int to) {
        double sum = 0;
        if (step > 0) {
            for (int k = from; k < to; k++) {
                solution[k] += step * direction[k];
            }
            for (int k = from; k < to; k++) {
                residual[k] -= step * image[k];
            }
        }
        for (int k = from; k < to; k++) {
            sum += residual[k] * residual[k];
        }
        partialSums[block] = sum;
    }

    void advance() {
        residualNorm = Math.sqrt(sum(partialSums));
        residualIsTrue = false;
        iterations++;
    }

    /** Whether the true residual is worth computing: the recursive one has arrived or leads no further. */
    boolean hasArrived(StoppingRule rule) {
        double target = rule.target(rightHandSideNorm);
        // After a true residual that was still too large, aim lower rather than come back just short of it again.
        double aim = Math.max(starts > 1 ? 0.5 * target : target, RECURSION_DEPTH * startNorm);
        return !(residualNorm > aim) || !(step > 0) || iterations >= rule.iterationLimit();
    }

    boolean isFinished(StoppingRule rule) {
        return residualIsTrue
                && (residualNorm <= rule.target(rightHandSideNorm) || stalled || iterations >= rule.iterationLimit());
    }

    /** Returns how the solve ended, or throws where it ended short of both the rule and the level of rounding. */
    SolveReport report(StoppingRule rule) {
        double target = rule.target(rightHandSideNorm);
        SolveStatus status = SolveStatus.CONVERGED;
        if (!(residualNorm <= target)) {
            status = residualNorm <= matrix.residualRounding(solution)
                    ? SolveStatus.ROUNDING_LIMIT
                    : SolveStatus.ITERATION_LIMIT;
        }
        SolveReport report = new SolveReport(status, iterations, rightHandSideNorm, residualNorm, target);
        if (status == SolveStatus.ITERATION_LIMIT) {
            throw new SolveFailedException(report);
        }
        return report;
    }

    private static double sum(double[] partialSums) {
        double sum = 0;
        for (double part : partialSums) {
            sum += part;
        }
        return sum;
    }
}
