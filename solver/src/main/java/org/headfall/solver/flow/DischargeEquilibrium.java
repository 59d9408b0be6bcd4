package org.headfall.solver.flow;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/**
 * Discharges of all head-dependent bores and springs at once. With the aquifer offering {@code w = w0 - K q} at their
 * walls (K symmetric positive semidefinite: the response of each wall to each discharge), each rule asks for
 * {@code needed_i(q_i) = w_i} between its bounds, {@code needed <= w} at the upper and {@code needed >= w} at the lower.
 * These are the conditions of a strictly convex minimum over a box, so there is one answer; it is found by projected
 * Newton steps with a line search (Bertsekas 1982, SIAM J. Control Optim. 20, 221-246).
 */
final class DischargeEquilibrium {

    private static final int MOST_STEPS = 200;
    private static final double SUFFICIENT_DECREASE = 1e-4;
    private static final double SHORTEST_STEP = 1e-12;

    private final DischargeRule[] rules;
    private final double[][] response;
    private final double[] offered;
    private final double tolerance;

    /**
     * The conditions.
     *
     * @param rules rule of each point
     * @param response K (d/m²)
     * @param offered w0, head at each wall if nothing of the head-dependent discharge were taken (m above datum)
     * @param tolerance largest error of head at a wall (m)
     */
    DischargeEquilibrium(DischargeRule[] rules, double[][] response, double[] offered, double tolerance) {
        this.rules = rules;
        this.response = response;
        this.offered = offered;
        this.tolerance = tolerance;
    }

    /**
     * Finds the discharges.
     *
     * @param discharge in: a guess; out: the answer (m³/d)
     * @throws IllegalStateException if the conditions cannot be met to the tolerance; the message gives both numbers
     */
    void solve(double[] discharge) {
        for (int i = 0; i < discharge.length; i++) {
            discharge[i] = rules[i].clamp(discharge[i]);
        }
        double worst = Double.NaN;
        for (int step = 0; step < MOST_STEPS; step++) {
            double[] gradient = gradient(discharge);
            boolean[] free = freePoints(discharge, gradient);
            worst = largestFree(gradient, free);
            if (worst <= tolerance) {
                return;
            }
            descend(discharge, gradient, newtonDirection(discharge, gradient, free));
        }
        throw new IllegalStateException("the rules of bores and springs could not be met together: head at a wall is"
                + " off by " + worst + " m, allowed " + tolerance + " m");
    }

    /** Needed head less offered head of each point (m). */
    private double[] gradient(double[] discharge) {
        double[] gradient = new double[discharge.length];
        for (int i = 0; i < gradient.length; i++) {
            double sum = rules[i].neededHead(discharge[i]) - offered[i];
            for (int j = 0; j < gradient.length; j++) {
                sum += response[i][j] * discharge[j];
            }
            gradient[i] = sum;
        }
        return gradient;
    }

    private boolean[] freePoints(double[] discharge, double[] gradient) {
        boolean[] free = new boolean[discharge.length];
        for (int i = 0; i < free.length; i++) {
            boolean heldLow = discharge[i] <= rules[i].least() && gradient[i] > 0;
            boolean heldHigh = discharge[i] >= rules[i].most() && gradient[i] < 0;
            free[i] = !heldLow && !heldHigh;
        }
        return free;
    }

    private static double largestFree(double[] gradient, boolean[] free) {
        double largest = 0;
        for (int i = 0; i < free.length; i++) {
            if (free[i]) {
                largest = Math.max(largest, Math.abs(gradient[i]));
            }
        }
        return largest;
    }

    private double[] newtonDirection(double[] discharge, double[] gradient, boolean[] free) {
        int n = discharge.length;
        DMatrixRMaj matrix = new DMatrixRMaj(n, n);
        DMatrixRMaj right = new DMatrixRMaj(n, 1);
        for (int i = 0; i < n; i++) {
            if (!free[i]) {
                matrix.set(i, i, 1);
                continue;
            }
            right.set(i, 0, -gradient[i]);
            for (int j = 0; j < n; j++) {
                if (free[j]) {
                    matrix.set(i, j, response[i][j]);
                }
            }
            matrix.add(i, i, rules[i].slope(discharge[i]));
        }
        LinearSolverDense<DMatrixRMaj> solver = LinearSolverFactory_DDRM.lu(n);
        if (!solver.setA(matrix)) {
            throw new IllegalStateException("bores or springs stand so that their effects cannot be told apart");
        }
        DMatrixRMaj direction = new DMatrixRMaj(n, 1);
        solver.solve(right, direction);
        return direction.getData();
    }

    private void descend(double[] discharge, double[] gradient, double[] direction) {
        double before = objective(discharge);
        double[] trial = new double[discharge.length];
        for (double length = 1; length > SHORTEST_STEP; length *= 0.5) {
            double promised = 0;
            for (int i = 0; i < trial.length; i++) {
                trial[i] = rules[i].clamp(discharge[i] + length * direction[i]);
                promised += gradient[i] * (trial[i] - discharge[i]);
            }
            // The slack lets steps through whose gain drowns in rounding.
            double slack = 1e-14 * Math.abs(before);
            if (objective(trial) <= before + SUFFICIENT_DECREASE * promised + slack) {
                break;
            }
        }
        System.arraycopy(trial, 0, discharge, 0, trial.length);
    }

    /** The convex function whose gradient is {@link #gradient}: m times m³/d. */
    private double objective(double[] discharge) {
        double sum = 0;
        for (int i = 0; i < discharge.length; i++) {
            double q = discharge[i];
            DischargeRule rule = rules[i];
            sum += q * (rule.offset() - offered[i] + q * (rule.linear() / 2 + q * rule.quadratic() / 3));
            for (int j = 0; j < discharge.length; j++) {
                sum += 0.5 * q * response[i][j] * discharge[j];
            }
        }
        return sum;
    }
}
