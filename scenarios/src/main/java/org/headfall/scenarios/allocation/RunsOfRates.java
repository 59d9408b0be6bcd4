package org.headfall.scenarios.allocation;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.RunProgress;
import org.headfall.solver.response.StationResponses;
import org.headfall.solver.response.UnitResponses;

/** Runs of a plan with rates of some bores: by superposition as long as that keeps the head tolerance, or by the simulator; counted. */
final class RunsOfRates {

    private final RatesInPlan rates;
    private final double[] watched;
    private final Optional<StationResponses> superposable;
    private final UnitResponses responses;
    private final Map<Comparison, List<StationSeries>> compared;
    private final RunProgress progress;

    private int bySuperposition;
    private int bySimulator;

    /**
     * No run yet.
     *
     * @param rates puts rates into the plan
     * @param watched days on which levels and limits are looked at besides those of the plan (d)
     * @param superposable what runs are superposed from; absent where only the simulator can make them
     * @param responses unit responses of the problem
     * @param compared other cases that limits compare with
     * @param progress is told how far a run has come
     */
    RunsOfRates(
            RatesInPlan rates,
            double[] watched,
            Optional<StationResponses> superposable,
            UnitResponses responses,
            Map<Comparison, List<StationSeries>> compared,
            RunProgress progress) {
        this.rates = rates;
        this.watched = watched;
        this.superposable = superposable;
        this.responses = responses;
        this.compared = compared;
        this.progress = progress;
    }

    /** How many were made by superposition. */
    int bySuperposition() {
        return bySuperposition;
    }

    /** How many were made by the simulator. */
    int bySimulator() {
        return bySimulator;
    }

    /** How many were made in all. */
    int count() {
        return bySuperposition + bySimulator;
    }

    /** The run in which the bores rest, which does not count. */
    RunInMemory resting(int variables) {
        double[] none = new double[variables];
        return superpose(none).orElseGet(() -> simulate(none));
    }

    /** The run with rates, by superposition unless one before had to be simulated (m³/d, bore by bore and group by group). */
    RunInMemory with(double[] found) {
        return (bySimulator == 0 ? superposed(found) : Optional.<RunInMemory>empty()).orElseGet(() -> simulated(found));
    }

    /** The same by superposition; absent where that does not keep the head tolerance. */
    Optional<RunInMemory> superposed(double[] found) {
        Optional<RunInMemory> superposed = superpose(found);
        if (superposed.isPresent()) {
            bySuperposition++;
        }
        return superposed;
    }

    /** The same by the simulator. */
    RunInMemory simulated(double[] found) {
        bySimulator++;
        return simulate(found);
    }

    private Optional<RunInMemory> superpose(double[] found) {
        RunPlan plan = rates.with(found, watched);
        return superposable
                .flatMap(known -> RunInMemory.superposed(plan, known))
                .map(run -> run.beside(compared));
    }

    private RunInMemory simulate(double[] found) {
        return RunInMemory.of(rates.with(found, watched), responses, progress).beside(compared);
    }
}
