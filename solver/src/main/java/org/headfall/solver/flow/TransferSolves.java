package org.headfall.solver.flow;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.IntConsumer;
import org.headfall.solver.linear.WorkerTeam;
import org.headfall.solver.nearfield.CellWeights;
import org.headfall.solver.nearfield.ObservedHead;

/** Solves for what {@link TransferValues} holds, at one shift after the other, for as many as are needed. */
public final class TransferSolves {

    private final Receptors receptors;
    /** Those of the receptors, then of other sources. */
    private final List<CellWeights> weights;

    private final int paired;
    private final boolean tied;
    private final Optional<SourceFields> fields;
    private final ShiftedSolves solves;
    private final List<PairValues> values = new ArrayList<>();
    private final List<PairValues> falls = new ArrayList<>();
    private double[] shifts = {};

    /**
     * Makes ready.
     *
     * @param problem the problem; its rules and recharge do not matter, nor what heads its boundaries have, only what is linear
     * @param observed points that take no water
     * @param sources sources spread over many cells, if their effects are wanted too
     * @param fields receives the solutions of bores, springs and sources; none if nobody wants them
     * @param tolerance share of its source that a solution may be out of balance by
     * @param team threads of the linear solver
     */
    public TransferSolves(
            FlowProblem problem,
            List<ObservedHead> observed,
            List<ChangingSource> sources,
            Optional<SourceFields> fields,
            double tolerance,
            WorkerTeam team) {
        this.fields = fields;
        receptors = new Receptors(new PointDischarges(problem), observed);
        tied = new FlowEquation(problem).tied();
        weights = new ArrayList<>(receptors.weights());
        sources.forEach(source -> weights.add(source.shares()));
        paired = sources.isEmpty() ? receptors.takingWater() : weights.size();
        solves = new ShiftedSolves(problem, weights, tolerance, team);
    }

    /** Whether there is a steady state, at the shift zero: something ties heads down. */
    public boolean hasSteady() {
        return tied;
    }

    /** Runs a task for each place, shared among threads. */
    public void forPlaces(IntConsumer task) {
        solves.forSources(weights.size(), task);
    }

    /** Number of places that are solved for: bores, springs, points, then other sources. */
    public int places() {
        return weights.size();
    }

    /**
     * Solves for all places. Series of falling shifts are quickest.
     *
     * @param shift value of the Laplace variable (1/d), another one than before; zero for the steady state
     */
    public void solve(double shift) {
        solves.solve(shift);
        PairValues now = new PairValues(weights.size(), paired, 1);
        read(now);
        values.add(now);
        PairValues fallsNow = new PairValues(weights.size(), paired, 1);
        solves.addFalls(paired, fallsNow, 0);
        falls.add(fallsNow);
        shifts = Arrays.copyOf(shifts, shifts.length + 1);
        shifts[shifts.length - 1] = shift;
        if (fields.isPresent()) {
            fields.get().take(shift, solves, receptors.count());
        }
    }

    /** The mean of both ways, which differ by what the linear solver leaves. */
    private void read(PairValues pairs) {
        forPlaces(i -> {
            pairs.of(i, i)[0] = weights.get(i).of(solves.drawdown(i));
            for (int j = 0; j < Math.min(i, paired); j++) {
                double there = weights.get(i).of(solves.drawdown(j));
                double back = weights.get(j).of(solves.drawdown(i));
                pairs.of(i, j)[0] = 0.5 * (there + back);
            }
        });
    }

    /** The shifts solved at so far, in their order (1/d); a copy. */
    public double[] shifts() {
        return shifts.clone();
    }

    /** H of a place and itself at every shift so far (d/m²). */
    public double[] ownValues(int place) {
        return row(values, place);
    }

    /** {@code -dH/ds} of a place and itself at every shift so far (d²/m²). */
    public double[] ownFalls(int place) {
        return row(falls, place);
    }

    private static double[] row(List<PairValues> pairs, int place) {
        return pairs.stream().mapToDouble(one -> one.of(place, place)[0]).toArray();
    }

    /** All that has been solved for. */
    public TransferValues values() {
        return new TransferValues(shifts.clone(), receptors, joined(values), joined(falls), tied && shifts[0] == 0);
    }

    private PairValues joined(List<PairValues> ofShifts) {
        PairValues all = new PairValues(weights.size(), paired, shifts.length);
        for (int k = 0; k < shifts.length; k++) {
            for (int i = 0; i < weights.size(); i++) {
                all.of(i, i)[k] = ofShifts.get(k).of(i, i)[0];
                for (int j = 0; j < Math.min(i, paired); j++) {
                    all.of(i, j)[k] = ofShifts.get(k).of(i, j)[0];
                }
            }
        }
        return all;
    }
}
