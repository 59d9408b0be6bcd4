package org.headfall.solver.flow;

import java.util.ArrayList;
import java.util.List;
import org.headfall.solver.linear.WorkerTeam;
import org.headfall.solver.nearfield.CellWeights;
import org.headfall.solver.nearfield.ObservedHead;

/**
 * Laplace transforms of the drawdown by a unit impulse of discharge at every bore and spring, the causes, at every bore,
 * spring and observed point, the receptors, for some real values of the Laplace variable, the shifts: {@code H_ij(s) =
 * g_i^T h_j(s)} with {@code (s S + A + bed(s)) h_j = g_j} and g the weights by which a point takes water and sees heads
 * (d/m²). Also how steeply H falls, {@code -dH_ij/ds = h_i^T W h_j} with {@code W = S + d bed/ds} (d²/m²). Both are the
 * same both ways; each receptor is solved for as well.
 */
public final class TransferValues {

    private final double[] shifts;
    private final PointDischarges points;
    private final List<ObservedHead> observed;
    private final PairValues values;
    private final PairValues falls;

    /**
     * Solves for all receptors at all shifts.
     *
     * @param problem the problem; its boundaries, rules and recharge do not matter, only what is linear
     * @param observed points that take no water
     * @param shifts values of the Laplace variable (1/d), positive, all different, evenly spaced in the logarithm
     * @param team threads of the linear solver
     */
    public TransferValues(FlowProblem problem, List<ObservedHead> observed, double[] shifts, WorkerTeam team) {
        this.shifts = shifts.clone();
        this.observed = List.copyOf(observed);
        points = new PointDischarges(problem);
        values = new PairValues(receptors(), causes(), shifts.length);
        falls = new PairValues(receptors(), causes(), shifts.length);
        List<CellWeights> weights = weights();
        ShiftedSolves solves = new ShiftedSolves(problem, weights, team);
        for (int k = 0; k < shifts.length; k++) {
            solves.solve(shifts[k]);
            read(solves, weights, k);
            solves.addFalls(causes(), falls, k);
        }
    }

    private List<CellWeights> weights() {
        List<CellWeights> weights = new ArrayList<>();
        for (int i = 0; i < causes(); i++) {
            weights.add(points.weights(i));
        }
        observed.forEach(point -> weights.add(point.weights()));
        return weights;
    }

    /** The mean of both ways, which differ by what the linear solver leaves. */
    private void read(ShiftedSolves solves, List<CellWeights> weights, int k) {
        for (int i = 0; i < receptors(); i++) {
            values.of(i, i)[k] = weights.get(i).of(solves.drawdown(i));
            for (int j = 0; j < Math.min(i, causes()); j++) {
                double there = weights.get(i).of(solves.drawdown(j));
                double back = weights.get(j).of(solves.drawdown(i));
                values.of(i, j)[k] = 0.5 * (there + back);
            }
        }
    }

    /** Number of bores and springs. */
    public int causes() {
        return points.count();
    }

    /** Number of bores, springs and observed points. */
    public int receptors() {
        return points.count() + observed.size();
    }

    /** The shifts (1/d); not to be changed. */
    public double[] shifts() {
        return shifts;
    }

    /** H of a receptor and a cause, or of a receptor and itself, at every shift (d/m²); not to be changed. */
    public double[] values(int receptor, int cause) {
        return values.of(receptor, cause);
    }

    /** {@code -dH/ds} of a receptor and a cause, or of a receptor and itself (d²/m²); not to be changed. */
    public double[] falls(int receptor, int cause) {
        return falls.of(receptor, cause);
    }

    /** Drawdown per discharge that the grid does not carry, which comes at once (d/m²). */
    public double atOnce(int receptor, int cause) {
        return receptor < causes()
                ? points.unresolved(receptor, cause)
                : observed.get(receptor - causes()).unresolved(cause);
    }
}
