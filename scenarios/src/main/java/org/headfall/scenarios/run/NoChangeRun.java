package org.headfall.scenarios.run;

import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import org.headfall.scenarios.doubts.Drift;
import org.headfall.scenarios.doubts.UnchangedProblem;
import org.headfall.scenarios.limits.RunSeries;
import org.headfall.scenarios.recording.ReportDate;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.simulation.Settings;

/**
 * The run with everything kept as it is at its start. Heads that are given need not be at rest, and then all figures
 * of loss and drawdown since the start hold their drift; steady heads drift by no more than the solver leaves.
 */
final class NoChangeRun {

    private NoChangeRun() {}

    /** Whether a run needs it: heads that are found as steady ones need no proof unless doubts are asked for. */
    static boolean isNeeded(RunPlan plan) {
        return plan.doubts() || plan.start() instanceof StartHeads.Given;
    }

    /**
     * Makes the run.
     *
     * @param plan the run whose start is kept
     * @param settings accuracy and threads
     * @return the largest drift of all stations and report dates; absent if there are none
     */
    static Optional<Drift> drift(RunPlan plan, Settings settings) {
        RunDescription description = plan.description();
        FlowProblem unchanged = plan.start() instanceof StartHeads.Steady steady
                ? UnchangedProblem.of(steady.problem(plan.problem()), 0)
                : UnchangedProblem.of(plan.problem(), StartState.BEFORE);
        double[] days = DoubleStream.concat(
                        DoubleStream.of(0), description.reportDates().stream().mapToDouble(ReportDate::day))
                .toArray();
        return Repeat.of(description, unchanged, plan.start(), days, new double[0], settings, List.of())
                .run()
                .flatMap(run -> largest(description, run));
    }

    private static Optional<Drift> largest(RunDescription description, RunSeries run) {
        Optional<Drift> largest = Optional.empty();
        for (int station = 0; station < run.series().size(); station++) {
            StationSeries series = run.series().get(station);
            for (ReportDate date : description.reportDates()) {
                double change = series.headAt(date.day()) - series.head()[0];
                if (largest.isEmpty()
                        || Math.abs(change) > Math.abs(largest.get().change())) {
                    String name = description.stations().get(station).name();
                    largest = Optional.of(new Drift(name, date.day(), change));
                }
            }
        }
        return largest;
    }
}
