package org.headfall.solver.flow;

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
    private final Receptors receptors;
    private final PairValues values;
    private final PairValues falls;
    private final boolean steady;

    /** What {@link TransferSolves} has solved for. */
    TransferValues(double[] shifts, Receptors receptors, PairValues values, PairValues falls, boolean steady) {
        this.shifts = shifts;
        this.receptors = receptors;
        this.values = values;
        this.falls = falls;
        this.steady = steady;
    }

    /** Number of bores and springs. */
    public int causes() {
        return receptors.takingWater();
    }

    /** Number of bores, springs and observed points. */
    public int receptors() {
        return receptors.count();
    }

    /** Head at a receptor while nothing is taken from the aquifer (m above datum), from heads of all cells. */
    public double headAt(int receptor, double[] head) {
        return receptors.weights(receptor).of(head);
    }

    /** The shifts (1/d); not to be changed. */
    public double[] shifts() {
        return shifts;
    }

    /** Whether the first shift is zero, that of the steady state: something ties heads down. */
    public boolean hasSteady() {
        return steady;
    }

    /** H of a receptor and a cause in the steady state, as far as the grid carries it (d/m²); zero without one. */
    public double steady(int receptor, int cause) {
        return steady ? values.of(receptor, cause)[0] : 0;
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
        return cause < causes() ? receptors.unresolved(receptor, cause) : 0;
    }
}
