package org.headfall.solver.flow;

import java.util.ArrayList;
import java.util.List;
import org.headfall.solver.linear.WorkerTeam;
import org.headfall.solver.nearfield.CellWeights;
import org.headfall.solver.nearfield.ObservedHead;

/**
 * Laplace transforms of the drawdown by a unit impulse of each of a few sources, {@code h_j(s) = (s S + A + bed(s))^-1 g_j},
 * read at every bore, spring and observed point: {@code w_i^T h_j(s)} (d/m²) for some real values of the Laplace variable,
 * the shifts. Only sources are solved for, however many places there are; {@link TransferValues} solves for the places too,
 * and is for those who need responses of second order or both ways.
 */
public final class SourceReadings {

    private final double[] shifts;
    private final List<Source> sources;
    private final Receptors receptors;
    private final double[][][] read;
    private final double[][] own;
    private final PairValues falls;
    private final double[][] steady;

    /**
     * A source.
     *
     * @param shares what each cell gives of it (-)
     * @param discharges discharge of each bore of the problem by a unit of the source (-): what of it the grid does not carry
     *     comes on top; empty for a source that is no bore
     */
    @SuppressWarnings("ArrayRecordComponent") // shared and never compared
    public record Source(CellWeights shares, double[] discharges) {}

    /**
     * Solves.
     *
     * @param given given rates of the problem; they do not matter here, nor do rules, but only what is linear
     * @param observed points that take no water
     * @param sources the sources
     * @param shifts values of the Laplace variable (1/d), positive, all different, evenly spaced in the logarithm
     * @param steady whether readings of the steady state are wanted as well
     * @param team threads of the linear solver
     */
    public SourceReadings(
            GivenRates given,
            List<ObservedHead> observed,
            List<Source> sources,
            double[] shifts,
            boolean steady,
            WorkerTeam team) {
        this.shifts = shifts.clone();
        this.sources = List.copyOf(sources);
        receptors = new Receptors(given.points(), observed);
        read = new double[places()][sources.size()][shifts.length];
        own = new double[sources.size()][shifts.length];
        falls = new PairValues(sources.size(), 0, shifts.length);
        this.steady = new double[places()][sources.size()];
        if (!sources.isEmpty()) {
            solve(given.problem(), steady, team);
        }
    }

    private void solve(FlowProblem problem, boolean withSteady, WorkerTeam team) {
        List<CellWeights> shares = sources.stream().map(Source::shares).toList();
        List<CellWeights> places = receptors.weights();
        ShiftedSolves solves = new ShiftedSolves(problem, shares, team);
        for (int k = 0; k < shifts.length; k++) {
            solves.solve(shifts[k]);
            solves.addFalls(0, falls, k);
            for (int source = 0; source < sources.size(); source++) {
                double[] drawdown = solves.drawdown(source);
                own[source][k] = shares.get(source).of(drawdown);
                for (int place = 0; place < places.size(); place++) {
                    read[place][source][k] = places.get(place).of(drawdown);
                }
            }
        }
        if (withSteady) {
            solves.solve(0);
            for (int place = 0; place < places.size(); place++) {
                for (int source = 0; source < sources.size(); source++) {
                    steady[place][source] = places.get(place).of(solves.drawdown(source));
                }
            }
        }
    }

    /** Number of places: bores, springs, then observed points. */
    public int places() {
        return receptors.count();
    }

    /** Number of sources. */
    public int sources() {
        return sources.size();
    }

    /** The shifts (1/d); not to be changed. */
    public double[] shifts() {
        return shifts;
    }

    /** Drawdown by a source where it stands itself, by its shares, at every shift (d/m²); not to be changed. */
    public double[] own(int source) {
        return own[source];
    }

    /** How steeply that falls with the shift (d²/m²); not to be changed. */
    public double[] falls(int source) {
        return falls.of(source, source);
    }

    /** Drawdown at a place by a source at every shift, as far as the grid carries it (d/m²); not to be changed. */
    public double[] at(int place, int source) {
        return read[place][source];
    }

    /** The same in the steady state (d/m²); zero if it was not wanted. */
    public double steady(int place, int source) {
        return steady[place][source];
    }

    /** Drawdown at a place by a source that the grid does not carry, which comes at once (d/m²). */
    public double atOnce(int place, int source) {
        return unresolved(place, sources.get(source).discharges());
    }

    /**
     * Drawdown at a place that the grid does not carry.
     *
     * @param place the place
     * @param discharges discharge of each bore (m³/d)
     * @return drawdown (m)
     */
    public double unresolved(int place, double[] discharges) {
        double sum = 0;
        for (int bore = 0; bore < discharges.length; bore++) {
            sum += discharges[bore] * receptors.unresolved(place, bore);
        }
        return sum;
    }

    /** Head at a place (m above datum) while nothing is taken close by, from heads of all cells. */
    public double headAt(int place, double[] head) {
        return receptors.weights(place).of(head);
    }

    /** Some bores and springs, each as a source that discharges one cubic metre a day. */
    public static List<Source> ofPoints(GivenRates given, int[] chosen) {
        List<Source> all = new ArrayList<>();
        for (int point : chosen) {
            double[] discharges = new double[given.problem().bores().size()];
            if (point < discharges.length) {
                discharges[point] = 1;
            }
            all.add(new Source(given.points().weights(point), discharges));
        }
        return all;
    }
}
