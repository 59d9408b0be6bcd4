package org.headfall.scenarios.allocation;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.solver.response.CoupledResponses;
import org.headfall.solver.response.HeadAnswers;

/**
 * Drawdown by rates with what springs and bores that follow head give less because of it, made linear in a run with some
 * rates. Where a limit counts some of the bores alone, what the others do to the run without those is taken off.
 */
final class AnsweredDrawdown implements DrawdownByRates {

    private final RunInMemory run;
    private final RateVariables variables;
    private final int[] bores;
    private final double[] changeDays;
    private final CoupledResponses with;
    private final Map<Comparison, CoupledResponses> without = new HashMap<>();

    /**
     * Drawdown.
     *
     * @param run a run with rates near to those that are of interest
     * @param answers what answers head in it
     * @param variables the rates
     */
    AnsweredDrawdown(RunInMemory run, HeadAnswers answers, RateVariables variables) {
        this.run = run;
        this.variables = variables;
        bores = variables.stations();
        changeDays = variables.changeDays();
        with = new CoupledResponses(run.responses(), answers);
    }

    private CoupledResponses without(Comparison comparison) {
        return without.computeIfAbsent(
                comparison, key -> new CoupledResponses(run.responses(), run.answersWithout(key)));
    }

    @Override
    public CoupledResponses.Changes on(double[] rates, Counted counted, double[] days) {
        CoupledResponses.Changes changes = with.changes(bores, changeDays, byChange(rates, counted, false), days);
        double[][] drawdown = changes.drawdown();
        if (counted.without().isPresent()) {
            double[][] besides = without(counted.without().get())
                    .changes(bores, changeDays, byChange(rates, counted, true), days)
                    .drawdown();
            for (int k = 0; k < days.length; k++) {
                for (int station = 0; station < drawdown[k].length; station++) {
                    drawdown[k][station] -= besides[k][station];
                }
            }
        }
        return changes;
    }

    /** Rates of each bore from each change on; none of bores that count, if others alone are wanted. */
    private double[][] byChange(double[] rates, Counted counted, boolean othersAlone) {
        double[][] all = new double[bores.length][changeDays.length];
        for (int b = 0; b < bores.length; b++) {
            if (!othersAlone || !counted.bores().get(b)) {
                for (int k = 0; k < changeDays.length; k++) {
                    all[b][k] = variables.rateAfter(rates, b, changeDays[k]);
                }
            }
        }
        return all;
    }

    @Override
    public double[] by(int station, Counted counted, double day) {
        double[] effects = new double[variables.count()];
        double[][] steps = with.at(station, day, bores, changeDays);
        if (counted.without().isPresent()) {
            double[][] besides = without(counted.without().get()).at(station, day, bores, changeDays);
            for (int b = 0; b < bores.length; b++) {
                if (!counted.bores().get(b)) {
                    for (int k = 0; k < changeDays.length; k++) {
                        steps[b][k] -= besides[b][k];
                    }
                }
            }
        }
        addSteps(steps, day, 1, effects);
        return effects;
    }

    private void addSteps(double[][] steps, double day, double factor, double[] effects) {
        for (int b = 0; b < bores.length; b++) {
            double[] ofBore = steps[b];
            variables.addSteps(b, day, begun -> factor * ofBore[Arrays.binarySearch(changeDays, begun)], effects);
        }
    }

    /**
     * {@inheritDoc} A bore that flows offers less by what it gives less, and by the loss that falls with that; head at the wall
     * of a bore without losses does not change at all.
     */
    @Override
    public double[] offeredBy(int bore, double perDischarge, double day) {
        double slope = with.headPerDischarge(bore, day);
        double[] effects = new double[variables.count()];
        if (Double.isInfinite(slope)) {
            addSteps(with.at(bore, day, bores, changeDays), day, 1, effects);
        } else {
            addSteps(with.lessDischarge(bore, day, bores, changeDays), day, slope + perDischarge, effects);
        }
        return effects;
    }

    @Override
    public double[] bySteady(int station, double day) {
        double[][] steps = with.at(station, day, bores, new double[] {0});
        return Arrays.stream(steps).mapToDouble(ofBore -> ofBore[0]).toArray();
    }

    @Override
    public boolean isAnswered() {
        return true;
    }
}
