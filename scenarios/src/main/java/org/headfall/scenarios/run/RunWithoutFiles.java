package org.headfall.scenarios.run;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.DoubleStream;
import org.headfall.scenarios.findings.ArtesianHeadAnalysis;
import org.headfall.scenarios.findings.Confinement;
import org.headfall.scenarios.findings.Findings;
import org.headfall.scenarios.findings.InterferenceAnalysis;
import org.headfall.scenarios.findings.InterferenceDrawdown;
import org.headfall.scenarios.findings.Recoveries;
import org.headfall.scenarios.limits.AfterTaking;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitEvaluation;
import org.headfall.scenarios.limits.LimitEvidence;
import org.headfall.scenarios.limits.LimitPlace;
import org.headfall.scenarios.limits.LimitResult;
import org.headfall.scenarios.limits.LimitedQuantity;
import org.headfall.scenarios.limits.RunSeries;
import org.headfall.scenarios.recording.PointHeads;
import org.headfall.scenarios.recording.RecordPlan;
import org.headfall.scenarios.recording.RecordSink;
import org.headfall.scenarios.recording.Recorder;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.TakenVolumes;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.results.RunFigures;
import org.headfall.solver.response.UnitResponses;
import org.headfall.solver.simulation.Simulation;
import org.headfall.solver.simulation.SimulationObserver;
import org.headfall.solver.simulation.Snapshot;

/**
 * A run that writes nothing: for one of many whose files nobody would read. Its numbers are those of {@link ScenarioRun}.
 * Unit responses, which can take longer than the run, are computed only where something needs them; shares of the causes
 * of limits are left out.
 */
public final class RunWithoutFiles {

    private final RunPlan plan;
    private final boolean interference;
    private final LimitMaps maps;
    private final List<RecordSink> all = new ArrayList<>();
    private final HeadError error;
    private final List<BitSet> crossed = new ArrayList<>();
    private final long started = System.nanoTime();

    private RunWithoutFiles(RunPlan plan, boolean interference, List<RecordSink> sinks) {
        this.plan = plan;
        this.interference = interference;
        maps = new LimitMaps(plan);
        all.add(maps);
        all.addAll(sinks);
        error = new HeadError(plan.description(), plan.settings().accuracy());
    }

    /**
     * Runs.
     *
     * @param plan what to run; repeats for its doubts are not made
     * @param interference whether drawdown is to be split by cause
     * @return the finished run
     */
    public static FinishedRun of(RunPlan plan, boolean interference) {
        return new RunWithoutFiles(plan, interference, List.of()).finished();
    }

    /**
     * A run with its maps of limits.
     *
     * @param run the finished run
     * @param crossed for each limit on a part of the map, in their order, the cells in which it is crossed
     */
    public record WithMaps(FinishedRun run, List<BitSet> crossed) {
        /** Copies the list. */
        public WithMaps {
            crossed = List.copyOf(crossed);
        }
    }

    /**
     * Runs, and says where limits on the map are crossed.
     *
     * @param plan what to run
     * @param interference whether drawdown is to be split by cause
     * @return the finished run with its maps
     */
    public static WithMaps withMaps(RunPlan plan, boolean interference) {
        return withMaps(plan, interference, List.of());
    }

    /**
     * Runs, says where limits on the map are crossed, and hands every record on.
     *
     * @param plan what to run
     * @param interference whether drawdown is to be split by cause
     * @param sinks receive every record
     * @return the finished run with its maps
     * @throws java.io.UncheckedIOException if a sink fails
     */
    public static WithMaps withMaps(RunPlan plan, boolean interference, List<RecordSink> sinks) {
        RunWithoutFiles run = new RunWithoutFiles(plan, interference, sinks);
        FinishedRun finished = run.finished();
        return new WithMaps(finished, run.crossed);
    }

    private FinishedRun finished() {
        StartState start = StartState.of(plan.problem(), plan.start(), plan.settings());
        double[] gridDays = DoubleStream.concat(Arrays.stream(plan.gridDays()), Arrays.stream(maps.days()))
                .toArray();
        RecordPlan records = RecordPlan.of(plan.description(), plan.stationDays(), gridDays);
        Recorder recorder = new Recorder(plan.description(), plan.problem().boundaries(), records, all);
        recorder.recorded(start.snapshot());
        Simulation.Outcome outcome;
        try (Simulation simulation = new Simulation(plan.problem(), plan.settings())) {
            outcome = simulation.run(start.heads(), 0, plan.description().endDay(), records.days(), both(recorder));
        }
        Recording recording = recorder.recording();
        Optional<UnitResponses> responses = responses();
        return new FinishedRun(
                plan.description(),
                recording,
                findings(recording, start, outcome, responses),
                limits(start, series(recording, outcome, responses)),
                new RunFigures(
                        outcome.statistics(),
                        error.atStations(),
                        error.method(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        (System.nanoTime() - started) * 1e-9,
                        PeakMemory.bytes(),
                        Runtime.getRuntime().availableProcessors()));
    }

    /**
     * The limits of a plan that hold for a part of the map, but for those that a map of heads does not decide.
     *
     * @param plan the plan
     */
    public static List<Limit> onMap(RunPlan plan) {
        return plan.limits().stream()
                .filter(limit -> limit.place() instanceof LimitPlace.OnMap
                        && !(limit.quantity() instanceof LimitedQuantity.Distance))
                .toList();
    }

    private SimulationObserver both(Recorder recorder) {
        return new SimulationObserver() {
            @Override
            public void recorded(Snapshot snapshot) {
                recorder.recorded(snapshot);
                error.recorded(snapshot);
            }
        };
    }

    private Optional<UnitResponses> responses() {
        boolean needed = interference || plan.limits().stream().anyMatch(ComparisonRuns::areNeededBy);
        return needed
                ? Optional.of(UnitResponses.of(
                        plan.problem(),
                        PointHeads.of(plan.description(), plan.problem().boundaries()),
                        // As long as those of a run with files, or the two would differ in the last digits.
                        RecoveryRuns.horizon(plan.description().endDay()),
                        plan.settings().threads()))
                : Optional.empty();
    }

    private Findings findings(
            Recording recording, StartState start, Simulation.Outcome outcome, Optional<UnitResponses> responses) {
        RunDescription description = plan.description();
        Optional<InterferenceDrawdown> split = interference
                ? responses.map(known -> DrawdownSplit.of(
                        known, outcome.rateHistory(), start.discharges(), recording, description.reportDates()))
                : Optional.empty();
        InterferenceAnalysis analysis =
                new InterferenceAnalysis(description, recording, plan.problem().bores());
        return new Findings(
                new ArtesianHeadAnalysis(description, recording).ofAllStations(),
                split.map(analysis::tables).orElse(List.of()),
                split.map(InterferenceDrawdown::method).orElse(List.of()),
                List.of(),
                Confinement.of(description, recording),
                Recoveries.NONE);
    }

    private List<LimitResult> limits(StartState start, RunSeries series) {
        LimitEvidence within = new LimitEvidence(
                series,
                error.atStations().stream().mapToDouble(Double::doubleValue).toArray(),
                List.of(),
                plan.mapPlaces(),
                maps.series(start, error.anywhere()),
                Map.of());
        Map<Comparison, AfterTaking> longer =
                AfterTakingRuns.of(plan, start, new LimitEvaluation(plan.description(), within));
        LimitEvaluation evaluation = new LimitEvaluation(plan.description(), within.with(longer));
        onMap(plan).forEach(limit -> crossed.add(evaluation.crossedCells(limit)));
        return evaluation.evaluate(plan.limits());
    }

    private RunSeries series(Recording recording, Simulation.Outcome outcome, Optional<UnitResponses> responses) {
        if (responses.isEmpty()) {
            int bores = plan.description().bores().size();
            return new RunSeries(
                    recording.series(), Map.of(), Optional.of(TakenVolumes.of(outcome.rateHistory(), bores)));
        }
        return new ComparisonRuns(
                        plan.description(),
                        plan.problem(),
                        plan.settings().accuracy(),
                        responses.get(),
                        outcome.rateHistory(),
                        recording.series())
                .forLimits(plan.limits());
    }
}
