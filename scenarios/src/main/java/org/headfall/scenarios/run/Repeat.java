package org.headfall.scenarios.run;

import java.util.List;
import java.util.Optional;
import org.headfall.scenarios.recording.RecordPlan;
import org.headfall.scenarios.recording.Recorder;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.simulation.Settings;
import org.headfall.solver.simulation.Simulation;

/**
 * A run repeated with something changed, of which only the series of the stations are kept.
 *
 * @param series series of each station, in the order of the stations; absent if it was not or could not be made
 * @param reason why there are none, as the end of a sentence; empty if there are
 */
record Repeat(Optional<List<StationSeries>> series, String reason) {

    /** No repeat. */
    static Repeat notMade(String reason) {
        return new Repeat(Optional.empty(), reason);
    }

    /**
     * Runs.
     *
     * @param description the run, on the grid of the problem
     * @param problem the changed problem
     * @param start heads at the start
     * @param days days to record
     * @param settings accuracy and threads
     * @return the series
     */
    static Repeat of(
            RunDescription description, FlowProblem problem, StartHeads start, double[] days, Settings settings) {
        RecordPlan records = new RecordPlan(days, new double[0], new double[0]);
        StartState state = StartState.of(problem, start, settings);
        Recorder recorder = new Recorder(description, records, List.of());
        recorder.recorded(state.snapshot());
        try (Simulation simulation = new Simulation(problem, settings)) {
            simulation.run(state.heads(), 0, description.endDay(), days, recorder);
        }
        return new Repeat(Optional.of(recorder.recording().series()), "");
    }
}
