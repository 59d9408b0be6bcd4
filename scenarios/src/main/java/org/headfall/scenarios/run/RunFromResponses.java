package org.headfall.scenarios.run;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Future;
import org.headfall.scenarios.findings.AttributionTable;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitMargins;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.limits.RunSeries;
import org.headfall.scenarios.recording.PointHeads;
import org.headfall.scenarios.recording.RecordPlan;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.responses.StoredResponses;
import org.headfall.scenarios.results.AnswerFiles;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.results.ResultsException;
import org.headfall.scenarios.results.ResultsFolder;
import org.headfall.scenarios.results.WrittenFiles;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.UnmetRuleException;
import org.headfall.solver.nearfield.ObservedHead;
import org.headfall.solver.response.StationResponses;
import org.headfall.solver.response.SuperposedRun;
import org.headfall.solver.response.SuperpositionException;

/**
 * A run answered from the unit responses of another on the same aquifer and grid: at bores, springs and points, without
 * maps. Its accuracy is promised: superposing leaves heads within 1 mm where all rates are given, within 5 mm where discharges
 * follow head. Where that cannot be kept it says why, and the run is to be simulated. What the responses themselves are off by
 * ({@link SuperposedRun#errorOfResponses()}) comes on top of that, and is in the error stated.
 */
public final class RunFromResponses {

    /** Largest error of head promised where discharges follow head (m). */
    public static final double PROMISED = 0.005;

    /** Largest error of head promised where all rates are given (m). */
    private static final double PROMISED_OF_GIVEN = 0.001;

    /** Accuracy that steps are chosen for at most (m): each may bend by a tenth of it, and rules be missed by a tenth of it. */
    private static final double OF_STEPS = 2 * PROMISED;

    private static final double ROUNDING = 1e-9;

    private final long started = System.nanoTime();
    private final RunPlan plan;
    private final StationResponses responses;
    private final AnswerFindings findings;
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
        this(plan, new EarlierResponses(folder));
    }

    /**
     * Answers a run.
     *
     * @param plan the run
     * @param earlier responses of another
     * @throws ResultsException if they cannot be read, or do not hold for this run; the message names all that differs
     */
    public RunFromResponses(RunPlan plan, EarlierResponses earlier) throws ResultsException {
        this(plan, MatchedResponses.read(plan, earlier), earlier.folder().toString());
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
        responses = matched.responses();
        findings = new AnswerFindings(plan, responses, source, matched.key().aquiferKey(), started);
        Optional<SuperposedRun> answered = Optional.empty();
        String why;
        if (matched.horizon() < plan.description().endDay() * (1 - ROUNDING)) {
            why = "the unit responses reach day " + Math.round(matched.horizon()) + " only, the run day "
                    + Math.round(plan.description().endDay());
        } else {
            try {
                answered = Optional.of(superposed(plan.problem()));
                why = beyondPromise(answered.get());
            } catch (UnmetRuleException | SuperpositionException known) {
                why = String.valueOf(known.getMessage());
            }
        }
        reason = why;
        run = why.isEmpty() ? answered : Optional.empty();
    }

    /** Why an answer is not as exact as is promised; empty if it is. */
    private static String beyondPromise(SuperposedRun answered) {
        double promised = answered.followsHead() ? PROMISED : PROMISED_OF_GIVEN;
        double error = answered.estimatedError();
        return error <= promised
                ? ""
                : String.format(
                        Locale.ROOT,
                        "%s may be off by %.4f m, above %.3f m",
                        answered.followsHead()
                                ? "finding discharges that follow head step by step"
                                : "superposing given rates",
                        error,
                        promised);
    }

    /** Error of head of an answer that is stated: by superposing, and by what the responses are off by (m). */
    static double statedError(SuperposedRun answered) {
        return answered.estimatedError() + answered.errorOfResponses();
    }

    /**
     * The run with its bores operated otherwise after the start.
     *
     * @param changed the problem of the run with other operations from day 0 on
     * @return the answer on all recorded days
     * @throws UnmetRuleException if the rules cannot be met
     * @throws SuperpositionException if discharges change too often, or modes of responses are not found
     */
    public SuperposedRun superposed(FlowProblem changed) {
        double accuracy = accuracyOfSteps(plan);
        SuperposedRun superposed = plan.start().superposed(plan.problem(), changed, responses, accuracy);
        RecordPlan records = RecordPlan.of(plan.description(), plan.stationDays(), plan.gridDays());
        superposed.run(records.days(), plan.description().endDay());
        return superposed;
    }

    /** Accuracy that the steps of an answer are chosen for (m): that of its run, but never less than answers promise. */
    static double accuracyOfSteps(RunPlan plan) {
        return Math.min(plan.settings().accuracy(), OF_STEPS);
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
        return AnswerAtStations.limitBeyond(plan)
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
            FinishedRun finished = write(results.file(""));
            results.complete();
            return finished;
        } catch (IOException e) {
            throw ResultsFolder.explained(e, target);
        } catch (UncheckedIOException e) {
            throw ResultsFolder.explained(Objects.requireNonNull(e.getCause()), target);
        }
    }

    /**
     * What each bore did, and the largest table, are found and written by other threads, and what those have not begun when all
     * else is done, by this one.
     */
    private FinishedRun write(Path folder) throws IOException {
        SuperposedRun answered = run.orElseThrow();
        Recording recording = findings.stations().recorded(answered.states());
        AnswerFiles files = new AnswerFiles(folder, plan.description());
        try (SideTasks tasks = new SideTasks(plan.settings().threads())) {
            Future<List<AttributionTable>> attribution = tasks.add(() -> {
                List<AttributionTable> tables = findings.attribution(answered, recording);
                files.writeAttribution(tables);
                return tables;
            });
            Future<Recording> series = tasks.add(() -> {
                files.writeSeries(recording);
                return recording;
            });
            FinishedRun besides = findings.besidesAttribution(answered, recording);
            files.writeFindings(besides);
            tasks.help();
            FinishedRun finished =
                    besides.withFindings(besides.findings().withAttribution(SideTasks.result(attribution)));
            SideTasks.result(series);
            files.writeSummary(finished);
            return finished;
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
        SuperposedRun answered = run.orElseThrow();
        Recording recording = findings.stations().recorded(answered.states());
        FinishedRun finished = findings.besidesAttribution(answered, recording);
        return finished.withFindings(finished.findings().withAttribution(findings.attribution(answered, recording)));
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
        return findings.withoutCauses(run.orElseThrow(), interference);
    }

    /**
     * Computes responses from which this and other runs on the same aquifer and grid can be answered.
     *
     * @param plan a run
     * @return its responses
     */
    public static StoredResponses responsesOf(RunPlan plan) {
        Optional<double[]> given = plan.start().given();
        List<ObservedHead> points =
                PointHeads.of(plan.description(), plan.problem().boundaries());
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

    /** The run that is answered. */
    RunPlan plan() {
        return plan;
    }

    /** What is found in answers, with the words for how exact they are. */
    AnswerFindings findings() {
        return findings;
    }

    /** What the answer and other runs give at the stations. */
    RunSeries series() {
        return findings.series(plan.problem(), run.orElseThrow(), plan.limits());
    }

    /**
     * Error of head, as it is stated, by answering a run at whose stations all discharges are given.
     *
     * @param stations what the run gives
     * @return the error (m); empty if superposing alone may leave more than is promised where all rates are given
     */
    OptionalDouble statedError(List<StationSeries> stations) {
        double moved = largestMove(stations);
        SuperposedRun answered = run.orElseThrow();
        double superposing = answered.errorWhenMovedBy(moved);
        return superposing <= PROMISED_OF_GIVEN
                ? OptionalDouble.of(superposing + answered.errorOfResponsesWhenMovedBy(moved))
                : OptionalDouble.empty();
    }

    private double largestMove(List<StationSeries> stations) {
        boolean fromRest = plan.start().given().isEmpty();
        double moved = 0;
        for (int point = 0; point < responses.responses().causes(); point++) {
            double[] discharge = stations.get(point).discharge();
            double from = fromRest ? discharge[0] : 0;
            for (double rate : discharge) {
                moved = Math.max(moved, Math.abs(rate - from));
            }
        }
        return moved;
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
        return findings.judged(limit, problem, answered);
    }

    /**
     * Margins of a limit of the run over time in an answer.
     *
     * @param limit a limit that {@link #judged} gives a worst value for
     * @param problem the problem that was answered
     * @param answered the answer
     * @return its margins
     */
    public LimitMargins margins(Limit limit, FlowProblem problem, SuperposedRun answered) {
        return findings.margins(limit, problem, answered);
    }
}
