package org.headfall.scenarios.run;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Future;
import java.util.stream.DoubleStream;
import org.headfall.scenarios.accounts.WaterAccounts;
import org.headfall.scenarios.doubts.Drift;
import org.headfall.scenarios.doubts.ErrorBudget;
import org.headfall.scenarios.findings.Findings;
import org.headfall.scenarios.limits.LimitResult;
import org.headfall.scenarios.limits.RunSeries;
import org.headfall.scenarios.recording.DischargeHistory;
import org.headfall.scenarios.recording.RecordPlan;
import org.headfall.scenarios.recording.RecordSink;
import org.headfall.scenarios.recording.Recorder;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.TakenVolumes;
import org.headfall.scenarios.responses.ResponseKey;
import org.headfall.scenarios.responses.StoredResponses;
import org.headfall.scenarios.results.AccountsCsv;
import org.headfall.scenarios.results.BoresFile;
import org.headfall.scenarios.results.DischargesFile;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.results.HeadsFile;
import org.headfall.scenarios.results.ResponsesFile;
import org.headfall.scenarios.results.ResultsException;
import org.headfall.scenarios.results.ResultsFolder;
import org.headfall.scenarios.results.RunFigures;
import org.headfall.scenarios.results.RunOutput;
import org.headfall.scenarios.results.WrittenFiles;
import org.headfall.solver.flow.RateHistory;
import org.headfall.solver.response.StationResponses;
import org.headfall.solver.response.UnitResponses;

/**
 * Runs a scenario and writes its results folder. Use one object a run.
 *
 * <p>The unit responses, which split drawdown by cause and say what the run would have given without some bores, do not
 * depend on the run. The run itself is superposed from them where that suits ({@link MainRuns}); else they come after it so
 * that each has all threads.
 */
public final class ScenarioRun {

    private final RunPlan plan;
    private final LimitMaps maps;
    private final RecordPlan records;
    private final List<RunOutput> outputs;
    private final RunProgress progress;
    private final long started = System.nanoTime();

    /**
     * Run of a plan.
     *
     * @param plan what to run
     * @param outputs files to make of the finished run besides {@code heads.nc} and {@code bores.nc}, in this order
     * @param progress is told how far the run has come
     */
    public ScenarioRun(RunPlan plan, List<RunOutput> outputs, RunProgress progress) {
        this.plan = plan;
        this.outputs = List.copyOf(outputs);
        this.progress = progress;
        maps = new LimitMaps(plan);
        double[] gridDays = DoubleStream.concat(Arrays.stream(plan.gridDays()), Arrays.stream(maps.days()))
                .toArray();
        records = RecordPlan.of(plan.description(), plan.stationDays(), gridDays);
    }

    /**
     * Runs and writes.
     *
     * @param target final folder of the results
     * @param overwrite whether results that stand there may be replaced, once the new ones are complete
     * @return the finished run
     * @throws ResultsException if results exist and may not be replaced, or a file cannot be written
     */
    public FinishedRun into(Path target, boolean overwrite) throws ResultsException {
        try (ResultsFolder folder = open(target, overwrite)) {
            Simulated simulated;
            try (RunResponses responses = new RunResponses(folder.file(""))) {
                simulated = simulate(folder, responses);
            }
            // no temporary file of the responses may be there when files are counted and hashed
            FinishedRun run = finish(folder, simulated, Map.of());
            folder.complete();
            return run;
        } catch (IOException e) {
            throw ResultsFolder.explained(e, target);
        } catch (UncheckedIOException e) {
            throw ResultsFolder.explained(Objects.requireNonNull(e.getCause()), target);
        }
    }

    /** Opens the folder of the results, if there is room. */
    ResultsFolder open(Path target, boolean overwrite) throws ResultsException {
        ResultsFolder folder = ResultsFolder.open(target, overwrite, WrittenFiles.OF_A_RUN);
        folder.requireSpace(2 * HeadsFile.expectedSize(plan.description().aquifer(), records.gridDays().length));
        return folder;
    }

    /** Judges the limits, also by other cases of the same document, and writes the files of the finished run. */
    FinishedRun finish(ResultsFolder folder, Simulated simulated, Map<String, Simulated> cases) throws IOException {
        progress.reached("judging limits", 0);
        FinishedRun run = finished(simulated, simulated.limits(cases));
        for (int i = 0; i < outputs.size(); i++) {
            progress.reached("writing tables and maps", (double) i / outputs.size());
            outputs.get(i).write(folder.file(""), run);
        }
        return run;
    }

    /** Simulates, and writes what needs no limits; responses that are known already are not computed again. */
    Simulated simulate(ResultsFolder folder, RunResponses known) throws IOException {
        progress.reached("finding heads at the start", 0);
        StartState start = StartState.of(plan.problem(), plan.start(), plan.settings());
        try (SideTasks tasks = new SideTasks(plan.settings().threads())) {
            Optional<DoubtRuns> doubts =
                    plan.doubts() ? Optional.of(DoubtRuns.beside(plan, records.days(), tasks)) : Optional.empty();
            Optional<Future<Optional<Drift>>> drift = NoChangeRun.isNeeded(plan)
                    ? Optional.of(tasks.add(
                            () -> NoChangeRun.drift(plan, plan.settings().withThreads(1))))
                    : Optional.empty();
            Recorded main = mainRun(folder, start, known);
            tasks.help(progress);
            progress.reached("comparing runs and splitting drawdown by cause", 0);
            StationResponses responses = known.stations(plan);
            store(responses, folder);
            RateHistory history = main.found().history();
            DischargesFile.write(
                    folder.file(""),
                    plan.description(),
                    DischargeHistory.of(history, records.days(), start.discharges()));
            writeAccounts(folder, history);
            return new Simulated(
                    plan,
                    start,
                    main.recording(),
                    maps,
                    main.found(),
                    responses,
                    DrawdownSplit.of(
                            responses.responses(),
                            history,
                            start.discharges(),
                            main.recording(),
                            plan.description().reportDates()),
                    comparisons(main, responses.responses()),
                    repeats(main, doubts, drift.flatMap(SideTasks::result)));
        }
    }

    private RunSeries comparisons(Recorded main, UnitResponses responses) {
        return new ComparisonRuns(
                        plan.description(),
                        plan.problem(),
                        plan.settings().accuracy(),
                        responses,
                        main.found().history(),
                        main.recording().series())
                .forLimits(plan.limits());
    }

    private static Simulated.Repeats repeats(Recorded main, Optional<DoubtRuns> doubts, Optional<Drift> drift) {
        RateHistory history = main.found().history();
        HeadError error = main.found().error();
        double[] stepError = doubts.map(runs -> runs.stepError(error, history))
                .orElseGet(() -> error.atStations().stream()
                        .mapToDouble(Double::doubleValue)
                        .toArray());
        return new Simulated.Repeats(
                doubts.map(runs -> runs.budget(main.recording(), error, history)),
                stepError,
                doubts.map(runs -> runs.solverError(history)).orElse(0.0),
                doubts.map(DoubtRuns::changedRuns).orElse(List.of()),
                drift);
    }

    private void writeAccounts(ResultsFolder folder, RateHistory history) throws IOException {
        if (plan.accounts().isPresent()) {
            TakenVolumes volumes =
                    TakenVolumes.of(history, plan.description().bores().size());
            WaterAccounts accounts =
                    new WaterAccounts(plan.accounts().get(), plan.description().calendar(), volumes);
            AccountsCsv.write(folder.file(""), accounts.all());
        }
    }

    private void store(StationResponses responses, ResultsFolder folder) throws IOException {
        ResponseKey key =
                ResponseKey.of(plan.description(), plan.problem(), plan.start().given());
        ResponsesFile.write(
                folder.file(""),
                plan.description(),
                StoredResponses.of(key, responses),
                responses.undisturbed(),
                records.days(),
                Instant.now());
    }

    private Recorded mainRun(ResultsFolder folder, StartState start, RunResponses responses) throws IOException {
        Instant now = Instant.now();
        MainRun way = new MainRuns(plan, start, records, responses, progress).choose();
        try (HeadsFile heads = new HeadsFile(folder.file("heads.nc"), plan.description(), now);
                BoresFile bores = new BoresFile(folder.file("bores.nc"), plan.description(), now)) {
            Recorder recorder = new Recorder(
                    plan.description(), plan.problem().boundaries(), records, List.<RecordSink>of(heads, bores, maps));
            recorder.recorded(start.snapshot());
            MainRun.Found found = way.run(recorder);
            heads.complete();
            bores.complete();
            return new Recorded(recorder.recording(), found);
        }
    }

    /** What the main run recorded, and what it leaves besides. */
    private record Recorded(Recording recording, MainRun.Found found) {}

    private FinishedRun finished(Simulated simulated, List<LimitResult> limits) {
        RunDescription description = plan.description();
        Recording recording = simulated.recording();
        Optional<ErrorBudget> budget = simulated.repeats().budget();
        Findings findings = RunFindings.of(
                description,
                plan.problem(),
                recording,
                simulated.split(),
                simulated.responses(),
                simulated.found().history(),
                simulated.start().discharges(),
                plan.start().given().isEmpty(),
                RecoveryRuns.of(plan, simulated.responses(), recording, Optional.empty()));
        return new FinishedRun(
                description,
                recording,
                findings,
                limits,
                new RunFigures(
                        simulated.found().statistics(),
                        budget.map(ErrorBudget::stationError)
                                .orElse(simulated.found().error().atStations()),
                        budget.isPresent()
                                ? DoubtRuns.METHOD
                                : simulated.found().error().method(),
                        budget,
                        simulated.repeats().drift(),
                        Optional.of(simulated.found().solvedBy()),
                        Optional.empty(),
                        (System.nanoTime() - started) * 1e-9,
                        PeakMemory.bytes(),
                        Runtime.getRuntime().availableProcessors()));
    }
}
