package org.headfall.solver.linear;

/**
 * The vectors and scalars of one right-hand side inside {@link ConjugateGradients}; reused from solve to solve. In what
 * precision the vectors are kept is up to the subclass; x is the answer, r the residual, z its correction by the
 * preconditioner, p the direction of a step and q its image {@code A p}.
 */
abstract class KrylovSystem {
    /** A true residual is not expected to be smaller, in parts of the largest recursive one. */
    private static final double LEAST_FALL = 0x1p-30;

    final FivePointMatrix matrix;
    /** Sums over the cells of each row, of the inner product in hand. */
    final double[] rowSums;

    double[] rightHandSide = {};
    double[] solution = {};
    private final double[] rightHandSideRowSums;
    private double rightHandSideNorm;
    private double residualNorm;
    private double startNorm;
    private double largestNorm;
    private double product;
    private double ratio;
    /** What the last direction must be multiplied by since the vectors were rescaled. */
    private double directionFactor;

    private double step;
    private int iterations;
    private int starts;
    private boolean startsFromZero;
    private boolean residualIsTrue;
    private boolean missed;
    private boolean stalled;

    KrylovSystem(FivePointMatrix matrix) {
        this.matrix = matrix;
        this.rowSums = new double[matrix.rows()];
        this.rightHandSideRowSums = new double[matrix.rows()];
    }

    /** The recursive residual carries no information this far below the largest one since the last true one. */
    abstract double recursionDepth();

    /** Makes a row of the right-hand side the residual. */
    abstract void takeRightHandSide(int row);

    /** Sets a row of the residual to {@code b - A x} and returns its part of (r, r). */
    abstract double takeResidual(int row, int part);

    /** Chooses the scale of the vectors for a residual of about some norm and says by what factor that changes them. */
    abstract double rescale(double norm);

    /** Brings a row of the residual of the first start to the scale that its norm asks for. */
    abstract void settleRow(int row, int part);

    /** Sets a row of p to {@code z + factor p}. */
    abstract void combineRow(int row, double factor);

    /** Sets a row of q to {@code A p} and returns its part of (p, q). */
    abstract double multiplyRow(int row, int part);

    /** Sets a row to {@code x = x + length p, r = r - length q} and returns its part of (r, r). */
    abstract double stepRow(int row, int part, double length);

    /** Returns the norm of the residual whose row sums {@link #stepRow} gave. */
    abstract double normOf(double squares);

    void assign(double[] newRightHandSide, double[] newSolution) {
        startsFromZero = isZero(newSolution);
        rightHandSide = newRightHandSide;
        solution = newSolution;
        startNorm = Double.POSITIVE_INFINITY;
        product = 0;
        directionFactor = 1;
        step = 0;
        iterations = 0;
        starts = 0;
        missed = false;
        stalled = false;
    }

    private static boolean isZero(double[] values) {
        int k = 0;
        while (k < values.length && values[k] == 0) {
            k++;
        }
        return k == values.length;
    }

    /** Whether the residual in hand is the right-hand side itself. */
    boolean isRightHandSide() {
        return startsFromZero && iterations == 0;
    }

    /** Whether a solve begins, so that the norm of its residual is not known yet. */
    boolean isFirstStart() {
        return starts == 0;
    }

    /** True residual of a row, and its part of both norms. */
    void startRow(int row, int part) {
        if (isFirstStart()) {
            int from = row * matrix.columns();
            rightHandSideRowSums[row] = squares(rightHandSide, from, from + matrix.columns());
        }
        if (isFirstStart() && startsFromZero) {
            takeRightHandSide(row);
            rowSums[row] = rightHandSideRowSums[row];
        } else {
            rowSums[row] = takeResidual(row, part);
        }
    }

    /** Makes ready for a true residual in the middle of a solve. */
    void prepareRestart() {
        // The recursive residual may have come out far smaller than the true one, or zero.
        double factor = rescale(Math.max(residualNorm, LEAST_FALL * largestNorm));
        product *= factor * factor;
        directionFactor *= factor;
    }

    /** Begins, or goes on, from the true residual; along the last direction if the recursive one was near it. */
    void start() {
        boolean goesOn = starts > 0 && step > 0 && 0.5 * Math.sqrt(sum(rowSums)) <= residualNorm;
        if (!goesOn) {
            product = 0;
            directionFactor = 1;
        }
        rightHandSideNorm = Math.sqrt(sum(rightHandSideRowSums));
        residualNorm = Math.sqrt(sum(rowSums));
        residualIsTrue = true;
        stalled = !(residualNorm <= 0.5 * startNorm);
        startNorm = residualNorm;
        largestNorm = residualNorm;
        if (starts == 0) {
            rescale(residualNorm);
        }
        starts++;
    }

    /** Ratio that makes the next direction conjugate to the last one; zero where there is none. */
    void conjugate() {
        double former = product;
        product = sum(rowSums);
        ratio = former > 0 ? directionFactor * (product / former) : 0;
        directionFactor = 1;
    }

    /** p = z + ratio p. */
    void directionRow(int row) {
        combineRow(row, ratio);
    }

    /** q = A p and a row's part of (p, q). */
    void curvatureRow(int row, int part) {
        rowSums[row] = multiplyRow(row, part);
    }

    /** Length of the step; zero where rounding has left no descent, which the next true residual then shows. */
    void chooseStep() {
        double curvature = sum(rowSums);
        step = curvature > 0 && product > 0 ? product / curvature : 0;
    }

    /** x = x + step p, r = r - step q, and a row's part of (r, r). */
    void updateRow(int row, int part) {
        rowSums[row] = stepRow(row, part, step);
    }

    /** Sum of squares, in four sums that do not wait for each other. */
    static double squares(double[] values, int from, int to) {
        double a = 0;
        double b = 0;
        double c = 0;
        double d = 0;
        int k = from;
        for (; k < to - 3; k += 4) {
            a += values[k] * values[k];
            b += values[k + 1] * values[k + 1];
            c += values[k + 2] * values[k + 2];
            d += values[k + 3] * values[k + 3];
        }
        for (; k < to; k++) {
            a += values[k] * values[k];
        }
        return (a + b) + (c + d);
    }

    void advance() {
        residualNorm = normOf(sum(rowSums));
        largestNorm = Math.max(largestNorm, residualNorm);
        residualIsTrue = false;
        iterations++;
    }

    /** Returns the norm of the residual in hand. */
    double residualNorm() {
        return residualNorm;
    }

    /** Whether the recursive residual has arrived and the rule takes its word. */
    private boolean isTrusted(StoppingRule rule) {
        return !rule.recomputed()
                && residualNorm <= rule.target(rightHandSideNorm)
                && residualNorm >= recursionDepth() * largestNorm;
    }

    /** Whether the true residual is worth computing: the recursive one has arrived or leads no further. */
    boolean hasArrived(StoppingRule rule) {
        double target = rule.target(rightHandSideNorm);
        // After a true residual that was still too large, aim lower rather than come back just short of it again.
        double aim = Math.max(missed ? 0.5 * target : target, recursionDepth() * largestNorm);
        boolean arrived = !(residualNorm > aim) || !(step > 0) || iterations >= rule.iterationLimit();
        if (isTrusted(rule) || !arrived) {
            return false;
        }
        missed |= residualNorm <= target;
        return true;
    }

    boolean isFinished(StoppingRule rule) {
        boolean ended =
                residualNorm <= rule.target(rightHandSideNorm) || stalled || iterations >= rule.iterationLimit();
        return isTrusted(rule) || (residualIsTrue && ended);
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

    private static double sum(double[] parts) {
        double sum = 0;
        for (double part : parts) {
            sum += part;
        }
        return sum;
    }
}
