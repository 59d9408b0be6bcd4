package org.headfall.scenarios.run;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.LeftOut;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitPlace;
import org.headfall.scenarios.limits.RunSeries;
import org.headfall.scenarios.recording.RecordPlan;
import org.headfall.scenarios.recording.Recorder;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.recording.TakenVolumes;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.RateHistory;
import org.headfall.solver.response.RunWithout;
import org.headfall.solver.response.UnitResponses;
import org.headfall.solver.simulation.Settings;

/** What other runs would have given at the stations, for the limits that measure an effect from them. */
final class ComparisonRuns {

    private final RunDescription description;
    private final FlowProblem problem;
    private final double accuracy;
    private final UnitResponses responses;
    private final RateHistory history;
    private final List<StationSeries> series;

    /**
     * Comparisons with a run.
     *
     * @param description the run
     * @param problem its problem
     * @param accuracy error of head allowed to one of its steps (m)
     * @param responses responses of the problem at all stations
     * @param history what the bores and springs discharged
     * @param series what the run recorded at its stations
     */
    ComparisonRuns(
            RunDescription description,
            FlowProblem problem,
            double accuracy,
            UnitResponses responses,
            RateHistory history,
            List<StationSeries> series) {
        this.description = description;
        this.problem = problem;
        this.accuracy = accuracy;
        this.responses = responses;
        this.history = history;
        this.series = series;
    }

    /** Whether a limit of a station needs a run that can be made from the run itself; other cases are runs of their own. */
    static boolean areNeededBy(Limit limit) {
        return limit.needsOtherRun()
                && limit.place() instanceof LimitPlace.AtStation
                && !(limit.comparison() instanceof Comparison.WithCase);
    }

    /** The run with the series of each comparison that a limit needs, other cases excepted. */
    RunSeries forLimits(List<Limit> limits) {
        Map<Comparison, List<StationSeries>> comparisons = new LinkedHashMap<>();
        for (Limit limit : limits) {
            if (areNeededBy(limit)) {
                comparisons.computeIfAbsent(limit.comparison(), this::series);
            }
        }
        int bores = description.bores().size();
        return new RunSeries(series, comparisons, Optional.of(TakenVolumes.of(history, bores)));
    }

    private List<StationSeries> series(Comparison comparison) {
        return comparison instanceof Comparison.BeforeAnyTaking
                ? beforeAnyTaking(description, problem, accuracy)
                : without(comparison);
    }

    private List<StationSeries> without(Comparison comparison) {
        RunWithout without = new RunWithout(
                problem,
                responses,
                history,
                LeftOut.bores(description, comparison),
                accuracy,
                series.get(0).days());
        StationSeries[] changed = new StationSeries[series.size()];
        Arrays.setAll(changed, station -> changed(station, without));
        return List.of(changed);
    }

    /** Levels in bores and wanted discharges stay those of the run: no limit of another run asks for them. */
    private StationSeries changed(int station, RunWithout without) {
        StationSeries run = series.get(station);
        double[] days = run.days();
        double[] head = run.head().clone();
        double[] discharge = run.discharge().clone();
        for (int k = 0; k < days.length; k++) {
            head[k] += without.rise(station, days[k]);
            if (station < history.points()) {
                discharge[k] += without.change(station, days[k]);
            }
        }
        return new StationSeries(days, head, run.levelInBore(), discharge, run.wantedDischarge());
    }

    /** The steady state without any bore, the same on all days. */
    static List<StationSeries> beforeAnyTaking(RunDescription description, FlowProblem problem, double accuracy) {
        StartState state = StartState.of(
                problem, new StartHeads.Steady(Set.of()), new Settings(accuracy, Double.POSITIVE_INFINITY, 1));
        Recorder recorder = new Recorder(
                description,
                problem.boundaries(),
                new RecordPlan(new double[] {0}, new double[0], new double[0]),
                List.of());
        recorder.recorded(state.snapshot());
        return recorder.recording().series().stream()
                .map(ComparisonRuns::always)
                .toList();
    }

    private static StationSeries always(StationSeries one) {
        return new StationSeries(
                new double[] {0, Double.MAX_VALUE},
                twice(one.head()),
                twice(one.levelInBore()),
                twice(one.discharge()),
                twice(one.wantedDischarge()));
    }

    private static double[] twice(double[] one) {
        return new double[] {one[0], one[0]};
    }
}
