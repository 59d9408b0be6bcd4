package org.headfall.scenarios.run;

import java.util.Arrays;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.solver.flow.RateHistory;
import org.headfall.solver.response.RunWithout;
import org.headfall.solver.response.UnitResponses;

/** What the run would have given without some bores, for the limits that count the effect of these bores alone. */
final class ComparisonRuns {

    private final RunPlan plan;
    private final UnitResponses responses;
    private final RateHistory history;
    private final Recording recording;

    /**
     * Comparisons with a run.
     *
     * @param plan the run
     * @param responses responses of its problem at all its stations
     * @param history what its bores and springs discharged
     * @param recording what it recorded
     */
    ComparisonRuns(RunPlan plan, UnitResponses responses, RateHistory history, Recording recording) {
        this.plan = plan;
        this.responses = responses;
        this.history = history;
        this.recording = recording;
    }

    /** The series without the bores of each comparison that a limit needs. */
    Map<Comparison, List<StationSeries>> forLimits() {
        Map<Comparison, List<StationSeries>> comparisons = new LinkedHashMap<>();
        for (Limit limit : plan.limits()) {
            if (limit.needsOtherRun()) {
                comparisons.computeIfAbsent(limit.comparison(), this::without);
            }
        }
        return comparisons;
    }

    private List<StationSeries> without(Comparison comparison) {
        List<Station.BoreSite> bores = plan.description().bores();
        BitSet shut = new BitSet();
        for (int i = 0; i < bores.size(); i++) {
            shut.set(i, counts(comparison, bores.get(i)));
        }
        RunWithout without = new RunWithout(
                plan.problem(), responses, history, shut, plan.settings().accuracy());
        StationSeries[] series = new StationSeries[recording.series().size()];
        Arrays.setAll(series, station -> changed(station, without));
        return List.of(series);
    }

    /** Levels in bores and wanted discharges stay those of the run: no limit of another run asks for them. */
    private StationSeries changed(int station, RunWithout without) {
        StationSeries run = recording.series().get(station);
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
