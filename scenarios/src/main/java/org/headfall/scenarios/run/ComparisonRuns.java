package org.headfall.scenarios.run;

import java.util.LinkedHashSet;
import java.util.List;
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

/** Further runs from the same start without some bores, for limits. */
final class ComparisonRuns {

    private final RunPlan plan;
    private final Settings settings;
    private final RecordPlan records;
    private final StartState start;

    ComparisonRuns(RunPlan plan, Settings settings, RecordPlan records, StartState start) {
        this.plan = plan;
        this.settings = settings;
        this.records = records;
        this.start = start;
    }

    /** Run for each comparison that a limit needs, to be recorded by {@link #without}. */
    Set<Comparison> forLimits() {
        Set<Comparison> comparisons = new LinkedHashSet<>();
        for (Limit limit : plan.limits()) {
            boolean needed = !(limit.comparison() instanceof Comparison.Start)
                    && !(limit.quantity() instanceof LimitedQuantity.FloorLevel);
            if (needed) {
                comparisons.add(limit.comparison());
            }
        }
        return comparisons;
    }

    /** The run without the bores whose taking a comparison counts. */
    Recording without(Comparison comparison) {
        Set<String> kept = plan.description().bores().stream()
                .filter(bore -> !counts(comparison, bore))
                .map(Station.BoreSite::name)
                .collect(Collectors.toSet());
        List<Bore> bores = StartHeads.onlyOperated(plan.problem().bores(), kept);
        return record(plan.problem().withBores(bores), settings);
    }

    private static boolean counts(Comparison comparison, Station.BoreSite bore) {
        if (comparison instanceof Comparison.WithoutHolder without) {
            return bore.holder().equals(without.holder());
        }
        return comparison instanceof Comparison.WithoutAnyBore || bore.proposed();
    }

    private Recording record(FlowProblem problem, Settings settings) {
        double end = plan.description().endDay();
        Recorder recorder = new Recorder(plan.description(), records, List.of());
        recorder.recorded(start.snapshot());
        try (Simulation simulation = new Simulation(problem, settings)) {
            simulation.run(start.heads(), 0, end, records.days(), recorder);
        }
        return recorder.recording();
    }
}
