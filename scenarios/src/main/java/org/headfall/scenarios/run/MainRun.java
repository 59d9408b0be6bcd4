package org.headfall.scenarios.run;

import org.headfall.scenarios.recording.Recorder;
import org.headfall.scenarios.results.SolvedBy;
import org.headfall.solver.flow.RateHistory;
import org.headfall.solver.simulation.RunStatistics;

/** A way to find heads, discharges and water balances of a run from its start to its end. */
sealed interface MainRun permits SteppedMainRun, SuperposedMainRun {

    /** What the run is called while it goes on. */
    String STAGE = "simulating";

    /**
     * Runs.
     *
     * @param recorder takes every record; the start has been recorded
     * @return what the run leaves besides
     */
    Found run(Recorder recorder);

    /**
     * What a run leaves besides its records.
     *
     * @param history discharges of every step
     * @param statistics what it took
     * @param error its error
     * @param solvedBy how it was found, and why so
     */
    record Found(RateHistory history, RunStatistics statistics, HeadError error, SolvedBy solvedBy) {}
}
