package org.headfall.scenarios.run;

import java.util.Arrays;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.RunSeries;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.RateHistory;
import org.headfall.solver.response.RunWithout;
import org.headfall.solver.response.UnitResponses;

/** What the run would have given without some bores, for the limits that count the effect of these bores alone. */
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

    /** The run with the series without the bores of each comparison that a limit needs. */
    RunSeries forLimits(List<Limit> limits) {
        Map<Comparison, List<StationSeries>> comparisons = new LinkedHashMap<>();
        for (Limit limit : limits) {
            if (limit.needsOtherRun()) {
                comparisons.computeIfAbsent(limit.comparison(), this::without);
            }
        }
        return new RunSeries(series, comparisons);
    }

    private List<StationSeries> without(Comparison comparison) {
        List<Station.BoreSite> bores = description.bores();
        BitSet shut = new BitSet();
        for (int i = 0; i < bores.size(); i++) {
            shut.set(i, counts(comparison, bores.get(i)));
        }
        RunWithout without = new RunWithout(problem, responses, history, shut, accuracy);
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

    private static boolean counts(Comparison comparison, Station.BoreSite bore) {
        if (comparison instanceof Comparison.WithoutHolder without) {
            return bore.holder().equals(without.holder());
        }
        return comparison instanceof Comparison.WithoutAnyBore || bore.proposed();
    }
}
