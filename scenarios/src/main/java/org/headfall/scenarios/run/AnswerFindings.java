package org.headfall.scenarios.run;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.headfall.scenarios.findings.ArtesianHeadAnalysis;
import org.headfall.scenarios.findings.AttributionTable;
import org.headfall.scenarios.findings.Confinement;
import org.headfall.scenarios.findings.Findings;
import org.headfall.scenarios.findings.InterferenceAnalysis;
import org.headfall.scenarios.findings.InterferenceDrawdown;
import org.headfall.scenarios.findings.Recoveries;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitEvaluation;
import org.headfall.scenarios.limits.LimitEvidence;
import org.headfall.scenarios.limits.LimitResult;
import org.headfall.scenarios.limits.MapSeries;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.limits.RunSeries;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.results.AnsweredFrom;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.results.RunFigures;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.response.StationResponses;
import org.headfall.solver.response.SuperposedRun;
import org.headfall.solver.response.SuperposedState;
import org.headfall.solver.simulation.RunStatistics;

/** What is found in a run that was answered from unit responses, and how well its limits are kept. */
final class AnswerFindings {

    /** Error of head that is stated at least (m). */
    private static final double STATED = 0.001;

    private static final String METHOD =
            "Bound of the error of answering from unit responses, at least what is promised"
                    + " where rates are given; the errors of the grid and of the distance of a far boundary are those of the run"
                    + " that the responses come from. The error of the data is not in it.";

    private final RunPlan plan;
    private final StationResponses responses;
    private final String source;
    private final String aquiferKey;
    private final long started;

    /**
     * Findings of answers.
     *
     * @param plan the run
     * @param responses the responses it is answered from
     * @param source where they come from, in words
     * @param aquiferKey key of what they depend on
     * @param started when the answer was begun, by {@link System#nanoTime}
     */
    AnswerFindings(RunPlan plan, StationResponses responses, String source, String aquiferKey, long started) {
        this.plan = plan;
        this.responses = responses;
        this.source = source;
        this.aquiferKey = aquiferKey;
        this.started = started;
    }

    /**
     * Puts drawdown down to single bores.
     *
     * @param answered the answer
     * @return one table a report date
     */
    List<AttributionTable> attribution(SuperposedRun answered) {
        return AttributionTables.of(
                plan.description(),
                plan.problem(),
                responses.responses(),
                answered.history(),
                answered.states().get(0).discharge(),
                recording(answered.states()));
    }

    /**
     * Everything but what is put down to single bores.
     *
     * @param answered the answer
     * @return the finished run, without grids and water balance
     */
    FinishedRun besidesAttribution(SuperposedRun answered) {
        RunDescription description = plan.description();
        Recording recording = recording(answered.states());
        double[] startRates = answered.states().get(0).discharge();
        RunSeries series = series(plan.problem(), answered, plan.limits());
        CauseShares shares =
                new CauseShares(description, responses.responses(), answered.history(), startRates, series);
        return new FinishedRun(
                description,
                recording,
                RunFindings.besidesAttribution(
                        description,
                        plan.problem(),
                        recording,
                        split(answered, recording),
                        RecoveryRuns.of(plan, responses, recording)),
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
     * The answer without what causes had which share in it.
     *
     * @param answered the answer
     * @param interference whether drawdown is to be split by cause all the same
     * @return the finished run, without grids, water balance, attribution and shares of the causes of limits
     */
    FinishedRun withoutCauses(SuperposedRun answered, boolean interference) {
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
                        Recoveries.NONE),
                judged(answered, series(plan.problem(), answered, plan.limits()), plan.limits()),
                figures(answered.history().steps(), answered.estimatedError()));
    }

    /**
     * Judges a limit of the run by an answer; who causes how much is left out.
     *
     * @param limit the limit
     * @param problem the problem that was answered
     * @param answered the answer
     * @return its outcome
     */
    Outcome judged(Limit limit, FlowProblem problem, SuperposedRun answered) {
        List<Limit> alone = List.of(limit);
        return judged(answered, series(problem, answered, alone), alone).get(0).outcome();
    }

    /** What an answer and the runs that limits compare it with give at the stations. */
    RunSeries series(FlowProblem problem, SuperposedRun answered, List<Limit> limits) {
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
                Optional.empty(),
                Optional.of(new AnsweredFrom(source, aquiferKey, estimatedError)),
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
