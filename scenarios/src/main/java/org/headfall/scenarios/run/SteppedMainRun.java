package org.headfall.scenarios.run;

import org.headfall.scenarios.recording.RecordPlan;
import org.headfall.scenarios.recording.Recorder;
import org.headfall.scenarios.results.SolvedBy;
import org.headfall.solver.simulation.Simulation;
import org.headfall.solver.simulation.SimulationObserver;
import org.headfall.solver.simulation.Snapshot;

/** A run by steps of the grid through time. */
record SteppedMainRun(RunPlan plan, StartState start, RecordPlan records, RunProgress progress, String why)
        implements MainRun {

    @Override
    public Found run(Recorder recorder) {
        HeadError error = new HeadError(plan.description(), plan.settings().accuracy());
        double end = plan.description().endDay();
        try (Simulation simulation = new Simulation(plan.problem(), plan.settings())) {
            Simulation.Outcome outcome =
                    simulation.run(start.heads(), 0, end, records.days(), new SimulationObserver() {
                        @Override
                        public void recorded(Snapshot snapshot) {
                            recorder.recorded(snapshot);
                            error.recorded(snapshot);
                        }

                        @Override
                        public void reached(double day) {
                            progress.reached(STAGE, day / end);
                        }
                    });
            return new Found(outcome.rateHistory(), outcome.statistics(), error, new SolvedBy(false, why, 0));
        }
    }
}
