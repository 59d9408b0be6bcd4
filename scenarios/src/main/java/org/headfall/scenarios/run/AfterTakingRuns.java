package org.headfall.scenarios.run;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.headfall.scenarios.limits.AfterTaking;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.LeftOut;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitEvaluation;
import org.headfall.scenarios.limits.RunSeries;
import org.headfall.scenarios.recording.PointHeads;
import org.headfall.scenarios.recording.RecordPlan;
import org.headfall.scenarios.recording.Recorder;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.RateHistory;
import org.headfall.solver.response.UnitResponses;
import org.headfall.solver.simulation.Simulation;
import org.headfall.solver.simulation.SimulationObserver;
import org.headfall.solver.simulation.Snapshot;

/**
 * The run once more from its start, but going on after its end, from which on the bores of a cause take nothing: far
 * away the worst comes long after that. It is made longer until the worst has passed, or until it is as long as is
 * allowed. Boundaries, recharge and other bores go on as they are on the last day of the period.
 */
final class AfterTakingRuns {

    /** How many times the period the run goes on, one try after the other. */
    private static final double[] PERIODS = {1, 4, 16};

    /** Longest run (d): a thousand years, as long as a period may be. */
    private static final double LONGEST = 365_250;

    /** Records after the end, the closer the nearer to it. */
    private static final int RECORDS = 240;

    private final RunPlan plan;
    private final StartState start;

    private AfterTakingRuns(RunPlan plan, StartState start) {
        this.plan = plan;
        this.start = start;
    }

    /**
     * The longer runs that limits ask for.
     *
     * @param plan the run
     * @param start its start
     * @param evaluation says whether the worst has passed
     * @return a longer run for each comparison of such limits
     */
    static Map<Comparison, AfterTaking> of(RunPlan plan, StartState start, LimitEvaluation evaluation) {
        Map<Comparison, List<Limit>> limits = plan.limits().stream()
                .filter(limit -> limit.period().afterTakingStops())
                .collect(Collectors.groupingBy(Limit::comparison));
        AfterTakingRuns runs = new AfterTakingRuns(plan, start);
        Map<Comparison, AfterTaking> longer = new HashMap<>();
        limits.forEach((comparison, asking) -> longer.put(comparison, runs.run(comparison, asking, evaluation)));
        return longer;
    }

    private AfterTaking run(Comparison comparison, List<Limit> limits, LimitEvaluation evaluation) {
        double end = plan.description().endDay();
        FlowProblem problem = StoppedTaking.from(plan.problem(), LeftOut.bores(plan.description(), comparison), end);
        AfterTaking longer = run(problem, Math.min(LONGEST, end * (1 + PERIODS[0])), limits);
        for (int i = 1; i < PERIODS.length && end * (1 + PERIODS[i - 1]) < LONGEST; i++) {
            AfterTaking reached = longer;
            if (limits.stream().allMatch(limit -> evaluation.worstHasPassed(limit, reached))) {
                break;
            }
            longer = run(problem, Math.min(LONGEST, end * (1 + PERIODS[i])), limits);
        }
        return longer;
    }

    private AfterTaking run(FlowProblem problem, double lastDay, List<Limit> limits) {
        RunDescription description = plan.description();
        double end = description.endDay();
        double[] days = DoubleStream.concat(
                        DoubleStream.concat(DoubleStream.of(0, end), DoubleStream.of(plan.stationDays())),
                        IntStream.rangeClosed(1, RECORDS)
                                .mapToDouble(i -> i == RECORDS
                                        ? lastDay
                                        : end + (lastDay - end) * i * i / ((double) RECORDS * RECORDS)))
                .sorted()
                .distinct()
                .toArray();
        Recorder recorder = new Recorder(
                description, problem.boundaries(), new RecordPlan(days, new double[0], new double[0]), List.of());
        HeadError error = new HeadError(description, plan.settings().accuracy());
        recorder.recorded(start.snapshot());
        RateHistory history;
        try (Simulation simulation = new Simulation(problem, plan.settings())) {
            history = simulation
                    .run(start.heads(), 0, lastDay, days, both(recorder, error))
                    .rateHistory();
        }
        double[] headError =
                error.atStations().stream().mapToDouble(Double::doubleValue).toArray();
        return new AfterTaking(
                compared(problem, lastDay, limits, history, recorder.recording().series()), headError, end);
    }

    private RunSeries compared(
            FlowProblem problem, double lastDay, List<Limit> limits, RateHistory history, List<StationSeries> series) {
        if (limits.stream().noneMatch(ComparisonRuns::areNeededBy)) {
            return new RunSeries(series, Map.of());
        }
        UnitResponses responses = UnitResponses.of(
                problem,
                PointHeads.of(plan.description(), problem.boundaries()),
                lastDay,
                plan.settings().threads());
        return new ComparisonRuns(plan.description(), problem, plan.settings().accuracy(), responses, history, series)
                .forLimits(limits);
    }

    private static SimulationObserver both(Recorder recorder, HeadError error) {
        return new SimulationObserver() {
            @Override
            public void recorded(Snapshot snapshot) {
                recorder.recorded(snapshot);
                error.recorded(snapshot);
            }
        };
    }
}
