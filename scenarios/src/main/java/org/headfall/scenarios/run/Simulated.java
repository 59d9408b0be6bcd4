package org.headfall.scenarios.run;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.headfall.scenarios.doubts.Drift;
import org.headfall.scenarios.doubts.ErrorBudget;
import org.headfall.scenarios.findings.InterferenceDrawdown;
import org.headfall.scenarios.limits.AfterTaking;
import org.headfall.scenarios.limits.ChangedRun;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.LimitEvaluation;
import org.headfall.scenarios.limits.LimitEvidence;
import org.headfall.scenarios.limits.LimitResult;
import org.headfall.scenarios.limits.RunSeries;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.solver.response.StationResponses;

/**
 * A run whose simulation is over and whose limits are still to be judged, for some compare it with other cases.
 *
 * @param plan the run
 * @param start its start
 * @param recording what it recorded
 * @param maps heads of the grid that its limits need
 * @param found its discharges, its error, and what it took
 * @param responses responses of its problem
 * @param split its drawdown by cause
 * @param series what it recorded, with the runs that can be made from it
 * @param repeats what repeated runs say of its errors
 */
record Simulated(
        RunPlan plan,
        StartState start,
        Recording recording,
        LimitMaps maps,
        MainRun.Found found,
        StationResponses responses,
        InterferenceDrawdown split,
        RunSeries series,
        Repeats repeats) {

    /**
     * What repeated runs say of the errors of a run.
     *
     * @param budget the error budget, if it was asked for
     * @param stepError error by time stepping and solver at each station (m)
     * @param solverError what of it the solver may leave (m), zero if that was not asked for
     * @param changedRuns runs by which limits are judged too
     * @param drift how far heads drift if nothing changes, if that was found out
     */
    @SuppressWarnings("ArrayRecordComponent") // made once a run, never compared
    record Repeats(
            Optional<ErrorBudget> budget,
            double[] stepError,
            double solverError,
            List<ChangedRun> changedRuns,
            Optional<Drift> drift) {}

    /**
     * Judges the limits.
     *
     * @param cases cases of the same document by their names; none if it has none
     * @return the outcome of each limit, with its shares
     */
    List<LimitResult> limits(Map<String, Simulated> cases) {
        RunDescription description = plan.description();
        CaseComparisons others = new CaseComparisons(plan.limits(), cases);
        RunSeries compared = series.with(others.series());
        LimitEvidence within = new LimitEvidence(
                compared,
                repeats.stepError(),
                repeats.changedRuns(),
                plan.mapPlaces(),
                maps.series(start, found.error().anywhere() + repeats.solverError())
                        .with(others.grids()),
                Map.of());
        Map<Comparison, AfterTaking> longer = AfterTakingRuns.of(plan, start, new LimitEvaluation(description, within));
        CauseShares shares =
                new CauseShares(description, responses.responses(), found.history(), start.discharges(), compared);
        return shares.with(new LimitEvaluation(description, within.with(longer)).evaluate(plan.limits()));
    }
}
