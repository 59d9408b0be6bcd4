package org.headfall.scenarios.run;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitedQuantity;
import org.headfall.scenarios.recording.RecordPlan;
import org.headfall.scenarios.recording.Recorder;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.Station;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.simulation.Settings;
import org.headfall.solver.simulation.Simulation;
import org.headfall.solver.simulation.SimulationObserver;
import org.headfall.solver.simulation.Snapshot;

/** Further runs from the same start: without some bores, for limits; with less accuracy, for the error of heads. */
final class ComparisonRuns {

    private final RunPlan plan;
    private final RecordPlan records;
    private final StartState start;
    private final RunProgress progress;

    ComparisonRuns(RunPlan plan, RecordPlan records, StartState start, RunProgress progress) {
        this.plan = plan;
        this.records = records;
        this.start = start;
        this.progress = progress;
    }

    /** Recording for each comparison that a limit needs. */
    Map<Comparison, Recording> forLimits() {
        Map<Comparison, Recording> recordings = new LinkedHashMap<>();
        for (Limit limit : plan.limits()) {
            boolean needed = !(limit.comparison() instanceof Comparison.Start)
                    && !(limit.quantity() instanceof LimitedQuantity.FloorLevel);
            if (needed && !recordings.containsKey(limit.comparison())) {
                recordings.put(limit.comparison(), without(limit.comparison()));
            }
        }
        return recordings;
    }

    private Recording without(Comparison comparison) {
        Set<String> kept = plan.description().bores().stream()
                .filter(bore -> !counts(comparison, bore))
                .map(Station.BoreSite::name)
                .collect(Collectors.toSet());
        List<Bore> bores = StartHeads.onlyOperated(plan.problem().bores(), kept);
        return record(plan.problem().withBores(bores), plan.settings(), "comparing with " + comparison.words());
    }

    private static boolean counts(Comparison comparison, Station.BoreSite bore) {
        if (comparison instanceof Comparison.WithoutHolder without) {
            return bore.holder().equals(without.holder());
        }
        return bore.proposed();
    }

    /** The run itself, with steps that may be wrong by a multiple of the usual error. */
    Recording lessAccurate(double multiple) {
        Settings usual = plan.settings();
        return record(
                plan.problem(),
                new Settings(multiple * usual.accuracy(), usual.largestStep(), usual.threads()),
                "estimating the error of heads");
    }

    private Recording record(FlowProblem problem, Settings settings, String stage) {
        double end = plan.description().endDay();
        Recorder recorder = new Recorder(plan.description(), records, List.of());
        recorder.recorded(start.snapshot());
        SimulationObserver observer = new SimulationObserver() {
            @Override
            public void recorded(Snapshot snapshot) {
                recorder.recorded(snapshot);
            }

            @Override
            public void reached(double day) {
                progress.reached(stage, day / end);
            }
        };
        new Simulation(problem, settings).run(start.heads(), 0, end, records.days(), observer);
        return recorder.recording();
    }
}
