package org.headfall.scenarios.run;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.DoubleStream;
import org.headfall.scenarios.findings.ArtesianHeadAnalysis;
import org.headfall.scenarios.findings.Confinement;
import org.headfall.scenarios.findings.Findings;
import org.headfall.scenarios.findings.InterferenceAnalysis;
import org.headfall.scenarios.findings.InterferenceDrawdown;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.LimitEvaluation;
import org.headfall.scenarios.recording.RecordPlan;
import org.headfall.scenarios.recording.RecordSink;
import org.headfall.scenarios.recording.Recorder;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.results.BoresFile;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.results.HeadsFile;
import org.headfall.scenarios.results.ResultsException;
import org.headfall.scenarios.results.ResultsFolder;
import org.headfall.scenarios.results.RunFigures;
import org.headfall.scenarios.results.RunOutput;
import org.headfall.solver.response.Interference;
import org.headfall.solver.response.UnitResponses;
import org.headfall.solver.simulation.Simulation;
import org.headfall.solver.simulation.SimulationObserver;
import org.headfall.solver.simulation.Snapshot;

/** Runs a scenario and writes its results folder. Use one object a run. */
public final class ScenarioRun {

    private static final String SIMULATING = "simulating";

    private static final List<String> INTERFERENCE_METHOD = List.of(
            "Drawdown since the start is split by superposition: the change of each bore's and spring's discharge since"
                    + " the start, as this run found it, times the response of the aquifer to a unit discharge there.",
            "Free flow, springs and pumps cut at their lowest level follow head and are not linear; what they actually"
                    + " gave is counted as a cause of its own, so the shares still add up. A negative share of a spring"
                    + " or free-flowing bore is water it no longer gives.",
            "The remainder is due to boundaries and recharge that change, to a start that was not at rest, and to the"
                    + " error of the numbers.");

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
                findings(recording, interference(recording, start, outcome)),
                new LimitEvaluation(plan.description(), recording, compared, stationErrors).evaluate(plan.limits()),
                new RunFigures(
                        outcome.statistics(),
                        error.atStations(),
                        error.method(),
                        (System.nanoTime() - started) * 1e-9,
                        PeakMemory.bytes(),
                        Runtime.getRuntime().availableProcessors()));
    }

    /** Drawdown since the start, split by what each bore and spring takes more or less than then. */
    private InterferenceDrawdown interference(Recording recording, StartState start, Simulation.Outcome outcome) {
        progress.reached("splitting drawdown by cause", 0);
        UnitResponses responses = UnitResponses.of(
                plan.problem(),
                plan.description().endDay(),
                plan.settings().accuracy(),
                plan.settings().threads());
        double[] startRates = DoubleStream.concat(
                        Arrays.stream(start.snapshot().boreRate()),
                        Arrays.stream(start.snapshot().springDischarge()))
                .toArray();
        Interference interference = new Interference(responses, outcome.rateHistory(), startRates);
        double[] days = plan.description().reportDates().stream()
                .mapToDouble(date -> date.day())
                .toArray();
        double[][][] drawdown =
                Arrays.stream(days).mapToObj(interference::drawdown).toArray(double[][][]::new);
        double[][] remainder = new double[days.length][startRates.length];
        for (int k = 0; k < days.length; k++) {
            for (int receptor = 0; receptor < startRates.length; receptor++) {
                StationSeries series = recording.series().get(receptor);
                remainder[k][receptor] = series.head()[0]
                        - series.headAt(days[k])
                        - Arrays.stream(drawdown[k][receptor]).sum();
            }
        }
        return new InterferenceDrawdown(days, drawdown, remainder, INTERFERENCE_METHOD);
    }

    private Findings findings(Recording recording, InterferenceDrawdown split) {
        return new Findings(
                new ArtesianHeadAnalysis(plan.description(), recording).ofAllStations(),
                new InterferenceAnalysis(
                                plan.description(), recording, plan.problem().bores())
                        .tables(split),
                split.method(),
                Confinement.of(plan.description(), recording));
    }
}
