package org.headfall.scenarios.run;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.headfall.scenarios.findings.ArtesianHeadAnalysis;
import org.headfall.scenarios.findings.Confinement;
import org.headfall.scenarios.findings.Findings;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.LimitEvaluation;
import org.headfall.scenarios.recording.RecordPlan;
import org.headfall.scenarios.recording.RecordSink;
import org.headfall.scenarios.recording.Recorder;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.results.BoresFile;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.results.HeadsFile;
import org.headfall.scenarios.results.ResultsException;
import org.headfall.scenarios.results.ResultsFolder;
import org.headfall.scenarios.results.RunFigures;
import org.headfall.scenarios.results.RunOutput;
import org.headfall.solver.simulation.Simulation;
import org.headfall.solver.simulation.SimulationObserver;
import org.headfall.solver.simulation.Snapshot;

/** Runs a scenario and writes its results folder. Use one object a run. */
public final class ScenarioRun {

    private static final String SIMULATING = "simulating";

    private final RunPlan plan;
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
        records = RecordPlan.of(plan.description(), plan.stationDays(), plan.gridDays());
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
        try (ResultsFolder folder = ResultsFolder.open(target, overwrite)) {
            folder.requireSpace(2 * HeadsFile.expectedSize(plan.description().aquifer(), records.gridDays().length));
            FinishedRun run = simulate(folder);
            for (int i = 0; i < outputs.size(); i++) {
                progress.reached("writing tables and maps", (double) i / outputs.size());
                outputs.get(i).write(folder.file(""), run);
            }
            folder.complete();
            return run;
        } catch (IOException e) {
            throw ResultsFolder.explained(e, target);
        } catch (UncheckedIOException e) {
            throw ResultsFolder.explained(Objects.requireNonNull(e.getCause()), target);
        }
    }

    private FinishedRun simulate(ResultsFolder folder) throws IOException {
        progress.reached("finding heads at the start", 0);
        StartState start = StartState.of(plan.problem(), plan.start(), plan.settings());
        Recorder recorder;
        Simulation.Outcome outcome;
        Instant now = Instant.now();
        try (HeadsFile heads = new HeadsFile(folder.file("heads.nc"), plan.description(), now);
                BoresFile bores = new BoresFile(folder.file("bores.nc"), plan.description(), now)) {
            recorder = new Recorder(plan.description(), records, List.<RecordSink>of(heads, bores));
            recorder.recorded(start.snapshot());
            double end = plan.description().endDay();
            outcome = new Simulation(plan.problem(), plan.settings())
                    .run(start.heads(), 0, end, records.days(), reporting(recorder, end));
            heads.complete();
            bores.complete();
        }
        return finished(recorder.recording(), start, outcome);
    }

    private SimulationObserver reporting(Recorder recorder, double end) {
        return new SimulationObserver() {
            @Override
            public void recorded(Snapshot snapshot) {
                recorder.recorded(snapshot);
            }

            @Override
            public void reached(double day) {
                progress.reached(SIMULATING, day / end);
            }
        };
    }

    private FinishedRun finished(Recording recording, StartState start, Simulation.Outcome outcome) {
        ComparisonRuns others = new ComparisonRuns(plan, records, start, progress);
        HeadError error = HeadError.between(
                recording,
                others.lessAccurate(HeadError.MULTIPLE),
                plan.settings().accuracy());
        Map<Comparison, Recording> compared = others.forLimits();
        double[] stationErrors =
                error.atStations().stream().mapToDouble(Double::doubleValue).toArray();
        return new FinishedRun(
                plan.description(),
                recording,
                findings(recording),
                new LimitEvaluation(plan.description(), recording, compared, stationErrors).evaluate(plan.limits()),
                new RunFigures(
                        outcome.statistics(),
                        error.atStations(),
                        error.method(),
                        (System.nanoTime() - started) * 1e-9,
                        PeakMemory.bytes(),
                        Runtime.getRuntime().availableProcessors()));
    }

    private Findings findings(Recording recording) {
        return new Findings(
                new ArtesianHeadAnalysis(plan.description(), recording).ofAllStations(),
                List.of(),
                List.of("Interference was not computed."),
                Confinement.of(plan.description(), recording));
    }
}
