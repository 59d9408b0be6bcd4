package org.headfall.solver.flow;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.headfall.solver.linear.WorkerTeam;
import org.headfall.solver.nearfield.CellWeights;
import org.headfall.solver.nearfield.ObservedHead;

/**
 * Laplace transforms of the drawdown by a unit impulse of discharge at every bore and spring, the causes, at every bore,
 * spring and observed point, the receptors, for some real values of the Laplace variable, the shifts: {@code H_ij(s) =
 * g_i^T h_j(s)} with {@code (s S + A + bed(s)) h_j = g_j} and g the weights by which a point takes water and sees heads
 * (d/m²). Also how steeply H falls, {@code -dH_ij/ds = h_i^T W h_j} with {@code W = S + d bed/ds} (d²/m²). Both are the
 * same both ways; each receptor is solved for as well. Sources other than bores and springs may follow the receptors, to
 * be asked for as causes of all of them. Where something ties heads down, the values at the shift zero are those of the
 * steady state.
 */
public final class TransferValues {

    private final double[] shifts;
    private final PointDischarges points;
    private final List<ObservedHead> observed;
    private final List<CellWeights> weights;
    private final PairValues values;
    private final PairValues falls;
    private final PairValues steady;
    private final boolean tied;

    /**
     * Solves for all receptors at all shifts.
     *
     * @param problem the problem; its boundaries, rules and recharge do not matter, only what is linear
     * @param observed points that take no water
     * @param sources sources spread over many cells, if their effects are wanted too
     * @param shifts values of the Laplace variable (1/d), positive, all different, evenly spaced in the logarithm
     * @param team threads of the linear solver
     */
    public TransferValues(
            FlowProblem problem,
            List<ObservedHead> observed,
            List<ChangingSource> sources,
            double[] shifts,
            WorkerTeam team) {
        this(problem, observed, sources, shifts, Optional.empty(), team);
    }

    /**
     * Solves, and keeps the solutions of bores, springs and sources.
     *
     * @param problem the problem
     * @param observed points that take no water
     * @param sources sources spread over many cells
     * @param shifts values of the Laplace variable (1/d), positive, all different, evenly spaced in the logarithm
     * @param fields receives the solutions, for the same sources and shifts; none if nobody wants them
     * @param team threads of the linear solver
     */
    public TransferValues(
            FlowProblem problem,
            List<ObservedHead> observed,
            List<ChangingSource> sources,
            double[] shifts,
            Optional<SourceFields> fields,
            WorkerTeam team) {
        this.shifts = shifts.clone();
        this.observed = List.copyOf(observed);
        points = new PointDischarges(problem);
        tied = new FlowEquation(problem).tied();
        weights = weights(sources);
        int solved = weights.size();
        int paired = sources.isEmpty() ? causes() : solved;
        values = new PairValues(solved, paired, shifts.length);
        falls = new PairValues(solved, paired, shifts.length);
        steady = new PairValues(solved, paired, 1);
        ShiftedSolves solves = new ShiftedSolves(problem, weights, team);
        for (int k = 0; k < shifts.length; k++) {
            solves.solve(shifts[k]);
            read(solves, values, paired, k);
            solves.addFalls(paired, falls, k);
            if (fields.isPresent()) {
                fields.get().take(k, solves, receptors());
            }
        }
        if (tied) {
            solves.solve(0);
            read(solves, steady, paired, 0);
        }
    }

    private List<CellWeights> weights(List<ChangingSource> sources) {
        List<CellWeights> all = new ArrayList<>();
        for (int i = 0; i < causes(); i++) {
            all.add(points.weights(i));
        }
        observed.forEach(point -> all.add(point.weights()));
        sources.forEach(source -> all.add(source.shares()));
        return all;
    }

    /** The mean of both ways, which differ by what the linear solver leaves. */
    private void read(ShiftedSolves solves, PairValues pairs, int paired, int k) {
        for (int i = 0; i < weights.size(); i++) {
            pairs.of(i, i)[k] = weights.get(i).of(solves.drawdown(i));
            for (int j = 0; j < Math.min(i, paired); j++) {
                double there = weights.get(i).of(solves.drawdown(j));
                double back = weights.get(j).of(solves.drawdown(i));
                pairs.of(i, j)[k] = 0.5 * (there + back);
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

    /** Head at a receptor while nothing is taken from the aquifer (m above datum), from heads of all cells. */
    public double headAt(int receptor, double[] head) {
        return weights.get(receptor).of(head);
    }

    /** The shifts (1/d); not to be changed. */
    public double[] shifts() {
        return shifts;
    }

    /** Whether there is a steady state: something ties heads down. */
    public boolean hasSteady() {
        return tied;
    }

    /** H of a receptor and a cause in the steady state, as far as the grid carries it (d/m²); zero without one. */
    public double steady(int receptor, int cause) {
        return steady.of(receptor, cause)[0];
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
        if (cause >= causes()) {
            return 0;
        }
        return receptor < causes()
                ? points.unresolved(receptor, cause)
                : observed.get(receptor - causes()).unresolved(cause);
    }
}
