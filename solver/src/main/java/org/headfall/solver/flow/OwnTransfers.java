package org.headfall.solver.flow;

import java.util.List;
import org.headfall.solver.linear.WorkerTeam;
import org.headfall.solver.nearfield.CellWeights;

/**
 * Transfer function of some places in Laplace space, each for its own discharge alone: {@code H = g^T h} and
 * {@code -dH/ds = h^T W h} with {@code h = (s S + A + bed(s))^-1 g}, at some shifts s. What places do to each other, of
 * which there are many more pairs, is left to {@link TransferValues}.
 */
public final class OwnTransfers {

    private final double[][] values;
    private final PairValues falls;

    /**
     * Solves.
     *
     * @param problem the problem; only what is linear in it matters
     * @param places weights of the cells that feed each place
     * @param shifts values of the Laplace variable (1/d), positive, evenly spaced in the logarithm
     * @param tolerance share of its source that a solution may be out of balance by
     * @param team threads of the linear solver
     */
    public OwnTransfers(
            FlowProblem problem, List<CellWeights> places, double[] shifts, double tolerance, WorkerTeam team) {
        values = new double[places.size()][shifts.length];
        falls = new PairValues(places.size(), 0, shifts.length);
        ShiftedSolves solves = new ShiftedSolves(problem, places, tolerance, team);
        for (int k = 0; k < shifts.length; k++) {
            solves.solve(shifts[k]);
            for (int place = 0; place < values.length; place++) {
                values[place][k] = places.get(place).of(solves.drawdown(place));
            }
            solves.addFalls(0, falls, k);
        }
    }

    /** H of a place at every shift (d/m²); not to be changed. */
    public double[] values(int place) {
        return values[place];
    }

    /** {@code -dH/ds} of a place at every shift (d²/m²); not to be changed. */
    public double[] falls(int place) {
        return falls.of(place, place);
    }
}
