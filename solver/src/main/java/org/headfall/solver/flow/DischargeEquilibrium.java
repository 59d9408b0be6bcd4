package org.headfall.solver.flow;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/**
 * Discharges of all head-dependent bores and springs at once. With the aquifer offering {@code w = w0 - K q} at their
 * walls (K symmetric positive semidefinite: the response of each wall to each discharge), each rule asks for
 * {@code needed_i(q_i) = w_i} between its bounds, {@code needed <= w} at the upper and {@code needed >= w} at the lower.
 * These are the conditions of a strictly convex minimum over a box, so there is one answer; it is found by projected
 * Newton steps with a line search (Bertsekas 1982, SIAM J. Control Optim. 20, 221-246). A needed head may have kinks, where
 * a lowest level takes over from a pump curve; it never falls, so the problem stays convex.
 */
final class DischargeEquilibrium {

    private static final int MOST_STEPS = 200;
    private static final double SUFFICIENT_DECREASE = 1e-4;
    private static final double SHORTEST_STEP = 1e-12;

    /** Nodes on (0, 1) and weights of Gauss and Legendre's rule of four points. */
    private static final double[] NODES = {
        0.0694318442029737, 0.3300094782075719, 0.6699905217924281, 0.9305681557970263
    };

    private static final double[] WEIGHTS = {
        0.1739274225687269, 0.3260725774312731, 0.3260725774312731, 0.1739274225687269
    };

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
     * @throws UnmetRuleException if the conditions cannot be met to the tolerance; it names the bore or spring that is
     *     farthest off and both numbers
     */
    void solve(double[] discharge) {
        for (int i = 0; i < discharge.length; i++) {
            discharge[i] = rules[i].clamp(discharge[i]);
        }
        int worst = 0;
        double[] gradient = gradient(discharge);
        for (int step = 0; step < MOST_STEPS; step++) {
            boolean[] free = freePoints(discharge, gradient);
            worst = worstFree(gradient, free);
            if (worst < 0) {
                return;
            }
            descend(discharge, gradient, newtonDirection(discharge, gradient, free));
            gradient = gradient(discharge);
        }
        throw new UnmetRuleException(rules[worst].name(), discharge[worst], gradient[worst], tolerance);
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

    /** The free point farthest from its rule, or -1 if none is off by more than the tolerance. */
    private int worstFree(double[] gradient, boolean[] free) {
        int worst = -1;
        double largest = tolerance;
        for (int i = 0; i < free.length; i++) {
            // Not "greater": what is not a number is the worst of all.
            if (free[i] && !(Math.abs(gradient[i]) <= largest)) {
                worst = i;
                largest = Math.abs(gradient[i]);
            }
        }
        return worst;
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
        double[] trial = new double[discharge.length];
        for (double length = 1; length > SHORTEST_STEP; length *= 0.5) {
            double promised = 0;
            for (int i = 0; i < trial.length; i++) {
                trial[i] = rules[i].clamp(discharge[i] + length * direction[i]);
                promised += gradient[i] * (trial[i] - discharge[i]);
            }
            if (change(discharge, trial, gradient) <= SUFFICIENT_DECREASE * promised) {
                break;
            }
        }
        System.arraycopy(trial, 0, discharge, 0, trial.length);
    }

    /**
     * Change of the convex function whose gradient is {@link #gradient}, from one set of discharges to another (m times
     * m³/d). Summed up along the way rather than as a difference of two values, so that small gains do not drown in
     * rounding.
     */
    private double change(double[] from, double[] to, double[] gradient) {
        double sum = 0;
        for (int i = 0; i < from.length; i++) {
            double step = to[i] - from[i];
            if (step == 0) {
                continue;
            }
            double start = rules[i].neededHead(from[i]);
            double slope = gradient[i];
            for (int node = 0; node < NODES.length; node++) {
                slope += WEIGHTS[node] * (rules[i].neededHead(from[i] + NODES[node] * step) - start);
            }
            for (int j = 0; j < from.length; j++) {
                slope += 0.5 * response[i][j] * (to[j] - from[j]);
            }
            sum += step * slope;
        }
        return sum;
    }
}
