package org.headfall.scenarios.run;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.headfall.scenarios.findings.ArtesianHeadAnalysis;
import org.headfall.scenarios.findings.Confinement;
import org.headfall.scenarios.findings.Findings;
import org.headfall.scenarios.findings.InterferenceAnalysis;
import org.headfall.scenarios.findings.InterferenceDrawdown;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitEvaluation;
import org.headfall.scenarios.limits.LimitEvidence;
import org.headfall.scenarios.limits.LimitPlace;
import org.headfall.scenarios.limits.LimitResult;
import org.headfall.scenarios.limits.MapSeries;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.limits.RunSeries;
import org.headfall.scenarios.recording.PointHeads;
import org.headfall.scenarios.recording.RecordPlan;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.responses.ResponseKey;
import org.headfall.scenarios.responses.StoredResponses;
import org.headfall.scenarios.results.AnsweredFrom;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.results.ResponsesReader;
import org.headfall.scenarios.results.ResultsException;
import org.headfall.scenarios.results.ResultsFolder;
import org.headfall.scenarios.results.RunFigures;
import org.headfall.scenarios.results.SummaryFile;
import org.headfall.scenarios.results.Tables;
import org.headfall.scenarios.results.WrittenFiles;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.nearfield.ObservedHead;
import org.headfall.solver.response.StationResponses;
import org.headfall.solver.response.SuperposedRun;
import org.headfall.solver.response.SuperposedState;
import org.headfall.solver.simulation.RunStatistics;

/**
 * A run answered from the unit responses of another on the same aquifer and grid: at bores, springs and points, without
 * maps. Its accuracy is promised: heads to 1 mm where rates are given, to 5 mm where discharges follow head. Where that
 * cannot be kept it says why, and the run is to be simulated.
 */
public final class RunFromResponses {

    /** Largest error of head promised where discharges follow head (m). */
    public static final double PROMISED = 0.005;

    /** Error of head that is stated at least (m). */
    private static final double STATED = 0.001;

    private static final double ROUNDING = 1e-9;

    private static final String METHOD =
            "Bound of the error of answering from unit responses, at least what is promised"
                    + " where rates are given; the errors of the grid and of the distance of a far boundary are those of the run"
                    + " that the responses come from. The error of the data is not in it.";

    private final long started = System.nanoTime();
    private final RunPlan plan;
    private final String source;
    private final ResponseKey key;
    private final StationResponses responses;
    private final Optional<SuperposedRun> run;
    private final String reason;

    /**
     * Answers a run.
     *
     * @param plan the run
     * @param folder results of the run that the responses come from
     * @throws ResultsException if the folder has no responses, or they do not hold for this run; the message names all
     *     that differs
     */
    public RunFromResponses(RunPlan plan, Path folder) throws ResultsException {
        this(
                plan,
                MatchedResponses.of(plan, ResponsesReader.readMatching(folder, MatchedResponses.keyOf(plan))),
                folder.toString());
    }

    /**
     * Answers a run from responses in memory.
     *
     * @param plan the run
     * @param matched responses that hold for it
     * @param source where they come from, in words
     */
    public RunFromResponses(RunPlan plan, MatchedResponses matched, String source) {
        this.plan = plan;
        this.source = source;
        key = matched.key();
        responses = matched.responses();
        Optional<SuperposedRun> answered = Optional.empty();
        String why;
        if (matched.horizon() < plan.description().endDay() * (1 - ROUNDING)) {
            why = "the unit responses reach day " + Math.round(matched.horizon()) + " only, the run day "
                    + Math.round(plan.description().endDay());
        } else {
            try {
                answered = Optional.of(superposed(plan.problem()));
                double error = answered.get().estimatedError();
                why = error <= PROMISED
                        ? ""
                        : String.format(
                                Locale.ROOT,
                                "taking discharges that follow head as straight in each step may be off by %.4f m,"
                                        + " above %.3f m",
                                error,
                                PROMISED);
            } catch (IllegalStateException e) {
                why = String.valueOf(e.getMessage());
            }
        }
        reason = why;
        run = why.isEmpty() ? answered : Optional.empty();
    }

    /**
     * The run with its bores operated otherwise after the start.
     *
     * @param changed the problem of the run with other operations from day 0 on
     * @return the answer on all recorded days
     * @throws IllegalStateException if the rules cannot be met
     */
    public SuperposedRun superposed(FlowProblem changed) {
        double accuracy = Math.min(plan.settings().accuracy(), PROMISED);
        SuperposedRun superposed = plan.start() instanceof StartHeads.Steady steady
                ? SuperposedRun.fromSteady(changed, steady.problem(plan.problem()), responses, accuracy)
                : SuperposedRun.fromGiven(changed, responses, accuracy);
        RecordPlan records = RecordPlan.of(plan.description(), plan.stationDays(), plan.gridDays());
        superposed.run(records.days(), plan.description().endDay());
        return superposed;
    }

    /** Why the accuracy promised cannot be kept and the run is to be simulated; absent if it can. */
    public Optional<String> reasonToSimulate() {
        return inexact().or(this::limitBeyond);
    }

    /** Why responses cannot give heads and discharges exactly enough; absent if they can. */
    public Optional<String> inexact() {
        return reason.isEmpty() ? Optional.empty() : Optional.of(reason);
    }

    private Optional<String> limitBeyond() {
        return plan.limits().stream()
                .filter(limit -> !(limit.place() instanceof LimitPlace.AtStation)
                        || limit.period().afterTakingStops())
                .findFirst()
                .map(limit -> "limit '" + limit.name() + "' is judged on the map or after taking has stopped");
    }

    private void requireAnswer() {
        Optional<String> obstacle = reasonToSimulate();
        if (obstacle.isPresent()) {
            throw new IllegalStateException(obstacle.get());
        }
    }

    /**
     * Writes tables and summary.
     *
     * @param target final folder of the results
     * @param overwrite whether results that stand there may be replaced, once the new ones are complete
     * @return the finished run, without grids and water balance
     * @throws ResultsException if results exist and may not be replaced, or a file cannot be written
     * @throws IllegalStateException if it is to be simulated
     */
    public FinishedRun into(Path target, boolean overwrite) throws ResultsException {
        requireAnswer();
        try (ResultsFolder results = ResultsFolder.open(target, overwrite, WrittenFiles.OF_A_RUN)) {
            FinishedRun finished = finished(run.orElseThrow());
            Tables.writeOfPlaces(results.file(""), finished);
            new SummaryFile().write(results.file(""), finished);
            results.complete();
            return finished;
        } catch (IOException e) {
            throw ResultsFolder.explained(e, target);
        }
    }

    /** The answer, by which a changed one can be judged; absent if it is not exact enough. */
    public Optional<SuperposedRun> answer() {
        return run;
    }

    /**
     * The answer in memory.
     *
     * @return the finished run, without grids and water balance
     * @throws IllegalStateException if it is to be simulated
     */
    public FinishedRun finished() {
        requireAnswer();
        return finished(run.orElseThrow());
    }

    /**
     * Computes responses from which this and other runs on the same aquifer and grid can be answered.
     *
     * @param plan a run
     * @return its responses
     */
    public static StoredResponses responsesOf(RunPlan plan) {
        Optional<double[]> given = plan.start().given();
        List<ObservedHead> points = PointHeads.of(plan.description());
        double end = plan.description().endDay();
        StationResponses computed = given.isPresent()
                ? StationResponses.fromGiven(
                        plan.problem(),
                        points,
                        given.get(),
                        end,
                        plan.settings().threads())
                : StationResponses.fromSteady(plan.problem(), points, end, plan.settings());
        return StoredResponses.of(MatchedResponses.keyOf(plan), computed);
    }

    private FinishedRun finished(SuperposedRun answered) {
        RunDescription description = plan.description();
        Recording recording = recording(answered.states());
        double[] startRates = answered.states().get(0).discharge();
        RunSeries series = series(plan.problem(), answered, plan.limits());
        CauseShares shares =
                new CauseShares(description, responses.responses(), answered.history(), startRates, series);
        return new FinishedRun(
                description,
                recording,
                RunFindings.of(
                        description,
                        plan.problem(),
                        recording,
                        split(answered, recording),
                        responses.responses(),
                        answered.history(),
                        startRates,
                        RecoveryRuns.of(plan, responses)),
                shares.with(judged(answered, series, plan.limits())),
                figures(answered.history().steps(), answered.estimatedError()));
    }

    private InterferenceDrawdown split(SuperposedRun answered, Recording recording) {
        double[] startRates = answered.states().get(0).discharge();
        return DrawdownSplit.of(
                responses.responses(),
                answered.history(),
                startRates,
                recording,
                plan.description().reportDates());
    }

    /**
     * The answer in memory without what causes had which share in it: for one of many runs of which single figures are
     * kept.
     *
     * @param interference whether drawdown is to be split by cause all the same
     * @return the finished run, without grids, water balance, attribution and shares of the causes of limits
     * @throws IllegalStateException if it is to be simulated
     */
    public FinishedRun withoutCauses(boolean interference) {
        requireAnswer();
        SuperposedRun answered = run.orElseThrow();
        Recording recording = recording(answered.states());
        InterferenceAnalysis analysis = new InterferenceAnalysis(
                plan.description(), recording, plan.problem().bores());
        Optional<InterferenceDrawdown> split =
                interference ? Optional.of(split(answered, recording)) : Optional.empty();
        return new FinishedRun(
                plan.description(),
                recording,
                new Findings(
                        new ArtesianHeadAnalysis(plan.description(), recording).ofAllStations(),
                        split.map(analysis::tables).orElse(List.of()),
                        split.map(InterferenceDrawdown::method).orElse(List.of()),
                        List.of(),
                        Confinement.of(plan.description(), recording),
                        List.of()),
                judged(answered, series(plan.problem(), answered, plan.limits()), plan.limits()),
                figures(answered.history().steps(), answered.estimatedError()));
    }

    /** The run that is answered. */
    RunPlan plan() {
        return plan;
    }

    /** What the answer and other runs give at the stations. */
    RunSeries series() {
        return series(plan.problem(), run.orElseThrow(), plan.limits());
    }

    /** Bound of the error of head that answering from responses makes (m). */
    double estimatedError() {
        return run.orElseThrow().estimatedError();
    }

    /**
     * Judges a limit of the run by an answer; who causes how much is left out.
     *
     * @param limit the limit
     * @param problem the problem that was answered
     * @param answered the answer
     * @return its outcome
     */
    public Outcome judged(Limit limit, FlowProblem problem, SuperposedRun answered) {
        List<Limit> alone = List.of(limit);
        return judged(answered, series(problem, answered, alone), alone).get(0).outcome();
    }

    private RunSeries series(FlowProblem problem, SuperposedRun answered, List<Limit> limits) {
        return new ComparisonRuns(
                        plan.description(),
                        problem,
                        plan.settings().accuracy(),
                        responses.responses(),
                        answered.history(),
                        recording(answered.states()).series())
                .forLimits(limits);
    }

    private List<LimitResult> judged(SuperposedRun answered, RunSeries series, List<Limit> limits) {
        return judged(series, answered.estimatedError(), limits);
    }

    /** Judges limits by series that are off by at most an estimated error (m). */
    List<LimitResult> judged(RunSeries series, double estimatedError, List<Limit> limits) {
        double[] errors = new double[plan.description().stations().size()];
        Arrays.fill(errors, statedError(estimatedError));
        LimitEvidence evidence =
                new LimitEvidence(series, errors, List.of(), plan.mapPlaces(), MapSeries.NONE, Map.of());
        return new LimitEvaluation(plan.description(), evidence).evaluate(limits);
    }

    private static double statedError(double estimated) {
        return Math.max(STATED, estimated);
    }

    /** Figures of an answer that took some steps and is off by at most an estimated error (m). */
    RunFigures figures(int steps, double estimatedError) {
        double seconds = (System.nanoTime() - started) * 1e-9;
        RunDescription description = plan.description();
        return new RunFigures(
                new RunStatistics(description.grid().cellCount(), steps, 0, 0, 0, estimatedError, 0, seconds),
                Collections.nCopies(description.stations().size(), statedError(estimatedError)),
                METHOD,
                Optional.empty(),
                Optional.empty(),
                Optional.of(new AnsweredFrom(source, key.aquiferKey(), estimatedError)),
                seconds,
                PeakMemory.bytes(),
                Runtime.getRuntime().availableProcessors());
    }

    private Recording recording(List<SuperposedState> states) {
        double[] days = states.stream().mapToDouble(SuperposedState::day).toArray();
        List<StationSeries> series = new ArrayList<>();
        for (int station = 0; station < plan.description().stations().size(); station++) {
            int place = station;
            series.add(new StationSeries(
                    days,
                    values(states, state -> state.head(), place),
                    values(states, state -> state.levelInBore(), place),
                    values(states, state -> state.discharge(), place),
                    values(states, state -> askedOfBores(state), place)));
        }
        return new Recording(days, series, List.of(), List.of(), new double[0]);
    }

    private static double[] askedOfBores(SuperposedState state) {
        return Arrays.copyOf(state.asked(), state.levelInBore().length);
    }

    /** One value a state, NaN at a station that has none. */
    private static double[] values(List<SuperposedState> states, Function<SuperposedState, double[]> of, int station) {
        return states.stream()
                .map(of)
                .mapToDouble(values -> station < values.length ? values[station] : Double.NaN)
                .toArray();
    }
}
