package org.headfall.solver.linear;

/** The vectors and scalars of one right-hand side inside {@link ConjugateGradients}; reused from solve to solve. */
final class KrylovSystem {
    /** The recursive residual carries no information this far below the true residual it started from. */
    private static final double RECURSION_DEPTH = 1e-14;

    final double[] residual;
    final double[] correction;
    private final FivePointMatrix matrix;
    private final int columns;
    private final double[] direction;
    private final double[] image;
    /** Sums over the cells of each row, of the inner product in hand. */
    final double[] rowSums;

    private final double[] rightHandSideRowSums;
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
    private boolean startsFromZero;
    private boolean residualIsTrue;
    private boolean stalled;

    KrylovSystem(FivePointMatrix matrix) {
        int cells = matrix.cells();
        this.matrix = matrix;
        this.columns = matrix.columns();
        this.residual = new double[cells];
        this.correction = new double[cells];
        this.direction = new double[cells];
        this.image = new double[cells];
        this.rowSums = new double[matrix.rows()];
        this.rightHandSideRowSums = new double[matrix.rows()];
    }

    void assign(double[] newRightHandSide, double[] newSolution) {
        startsFromZero = isZero(newSolution);
        rightHandSide = newRightHandSide;
        solution = newSolution;
        startNorm = Double.POSITIVE_INFINITY;
        iterations = 0;
        starts = 0;
        stalled = false;
    }

    private static boolean isZero(double[] values) {
        int k = 0;
        while (k < values.length && values[k] == 0) {
            k++;
        }
        return k == values.length;
    }

    /** True residual of a row, and its part of both norms. */
    void startRow(int row) {
        int from = row * columns;
        int to = from + columns;
        if (startsFromZero && starts == 0) {
            System.arraycopy(rightHandSide, from, residual, from, columns);
            rightHandSideRowSums[row] = squares(rightHandSide, from, to);
            rowSums[row] = rightHandSideRowSums[row];
        } else {
            if (starts == 0) {
                rightHandSideRowSums[row] = squares(rightHandSide, from, to);
            }
            rowSums[row] = matrix.residualRow(rightHandSide, solution, residual, row);
        }
    }

    /** Begins, or begins again, from the true residual. */
    void start() {
        rightHandSideNorm = Math.sqrt(sum(rightHandSideRowSums));
        residualNorm = Math.sqrt(sum(rowSums));
        residualIsTrue = true;
        stalled = !(residualNorm <= 0.5 * startNorm);
        startNorm = residualNorm;
        product = 0;
        starts++;
    }

    /** Ratio that makes the next direction conjugate to the last one; zero just after a start. */
    void conjugate() {
        double former = product;
        product = sum(rowSums);
        ratio = former > 0 ? product / former : 0;
    }

    /** p = z + ratio p. */
    void directionRow(int row) {
        int from = row * columns;
        int to = from + columns;
        if (ratio == 0) {
            System.arraycopy(correction, from, direction, from, to - from);
            return;
        }
        for (int k = from; k < to; k++) {
            direction[k] = correction[k] + ratio * direction[k];
        }
    }

    /** q = A p and a row's part of (p, q). */
    void curvatureRow(int row) {
        rowSums[row] = matrix.multiplyRow(direction, image, row);
    }

    /** Length of the step; zero where rounding has left no descent, which the next true residual then shows. */
    void chooseStep() {
        double curvature = sum(rowSums);
        step = curvature > 0 && product > 0 ? product / curvature : 0;
    }

    /** x = x + step p, r = r - step q, and a row's part of (r, r). */
    void updateRow(int row) {
        int from = row * columns;
        int to = from + columns;
        if (step > 0) {
            for (int k = from; k < to; k++) {
                solution[k] += step * direction[k];
            }
            for (int k = from; k < to; k++) {
                residual[k] -= step * image[k];
            }
        }
        rowSums[row] = squares(residual, from, to);
    }

    /** Sum of squares, in four sums that do not wait for each other. */
    private static double squares(double[] values, int from, int to) {
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
        residualNorm = Math.sqrt(sum(rowSums));
        residualIsTrue = false;
        iterations++;
    }

    /** Returns the norm of the residual in hand. */
    double residualNorm() {
        return residualNorm;
    }

    /** Whether the recursive residual has arrived and the rule takes its word. */
    private boolean isTrusted(StoppingRule rule) {
        return !rule.recomputed() && residualNorm <= rule.target(rightHandSideNorm);
    }

    /** Whether the true residual is worth computing: the recursive one has arrived or leads no further. */
    boolean hasArrived(StoppingRule rule) {
        return !isTrusted(rule) && leadsNoFurther(rule);
    }

    private boolean leadsNoFurther(StoppingRule rule) {
        double target = rule.target(rightHandSideNorm);
        // After a true residual that was still too large, aim lower rather than come back just short of it again.
        double aim = Math.max(starts > 1 ? 0.5 * target : target, RECURSION_DEPTH * startNorm);
        return !(residualNorm > aim) || !(step > 0) || iterations >= rule.iterationLimit();
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
