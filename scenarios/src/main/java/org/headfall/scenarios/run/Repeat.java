package org.headfall.scenarios.run;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.MapSeries;
import org.headfall.scenarios.limits.RunSeries;
import org.headfall.scenarios.recording.PointHeads;
import org.headfall.scenarios.recording.RecordPlan;
import org.headfall.scenarios.recording.Recorder;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.recording.TakenVolumes;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.RateHistory;
import org.headfall.solver.response.UnitResponses;
import org.headfall.solver.simulation.Settings;
import org.headfall.solver.simulation.Simulation;

/**
 * A run repeated with something changed, of which the series of the stations are kept, and heads of the grid where limits
 * on the map need them.
 *
 * @param run what it recorded, with what limits compare it with; absent if it was not or could not be made
 * @param maps heads of its grid; none if no limit holds for a part of the map
 * @param reason why there are none, as the end of a sentence; empty if there are
 */
record Repeat(Optional<RunSeries> run, MapSeries maps, String reason) {

    /** No repeat. */
    static Repeat notMade(String reason) {
        return new Repeat(Optional.empty(), MapSeries.NONE, reason);
    }

    /**
     * Runs.
     *
     * @param description the run, on the grid of the problem
     * @param problem the changed problem
     * @param start heads at the start
     * @param days days to record
     * @param mapDays those of them on which heads of the grid are kept
     * @param settings accuracy and threads
     * @param limits limits that will be judged by it
     * @return what it recorded
     */
    static Repeat of(
            RunDescription description,
            FlowProblem problem,
            StartHeads start,
            double[] days,
            double[] mapDays,
            Settings settings,
            List<Limit> limits) {
        RecordPlan records = new RecordPlan(days, mapDays, mapDays);
        StartState state = StartState.of(problem, start, settings);
        Recorder recorder = new Recorder(description, problem.boundaries(), records, List.of());
        recorder.recorded(state.snapshot());
        RateHistory history;
        try (Simulation simulation = new Simulation(problem, settings)) {
            history = simulation
                    .run(state.heads(), 0, description.endDay(), days, recorder)
                    .rateHistory();
        }
        List<StationSeries> series = recorder.recording().series();
        MapSeries maps = mapDays.length == 0
                ? MapSeries.NONE
                : new MapSeries(
                        recorder.recording().grids(),
                        new MapComparisons(description, problem, state, settings, mapDays).forLimits(limits),
                        0);
        if (limits.stream().noneMatch(ComparisonRuns::areNeededBy)) {
            TakenVolumes volumes = TakenVolumes.of(history, description.bores().size());
            return new Repeat(Optional.of(new RunSeries(series, Map.of(), Optional.of(volumes))), maps, "");
        }
        UnitResponses responses = UnitResponses.of(
                problem, PointHeads.of(description, problem.boundaries()), description.endDay(), settings.threads());
        ComparisonRuns comparisons =
                new ComparisonRuns(description, problem, settings.accuracy(), responses, history, series);
        return new Repeat(Optional.of(comparisons.forLimits(limits)), maps, "");
    }
}
