package org.headfall.scenarios.run;

import java.util.List;
import java.util.Optional;
import org.headfall.scenarios.findings.AttributionTable;
import org.headfall.scenarios.findings.InterferenceAnalysis;
import org.headfall.scenarios.findings.InterferenceDrawdown;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitMargins;
import org.headfall.scenarios.limits.LimitResult;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.limits.RunSeries;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.response.StationResponses;
import org.headfall.solver.response.SuperposedRun;

/** What is found in a run that was answered from unit responses, and how well its limits are kept. */
final class AnswerFindings {

    private final RunPlan plan;
    private final StationResponses responses;
    private final StationAnswer stations;

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
        stations = new StationAnswer(plan, source, Optional.of(aquiferKey), started);
    }

    /**
     * Puts drawdown down to single bores.
     *
     * @param answered the answer
     * @param recording what it recorded
     * @return one table a report date
     */
    List<AttributionTable> attribution(SuperposedRun answered, Recording recording) {
        return AttributionTables.of(
                plan.description(),
                plan.problem(),
                responses,
                answered.history(),
                answered.states().get(0).discharge(),
                plan.start().given().isEmpty(),
                recording);
    }

    /**
     * Everything but what is put down to single bores.
     *
     * @param answered the answer
     * @param recording what it recorded
     * @return the finished run, without grids and water balance
     */
    FinishedRun besidesAttribution(SuperposedRun answered, Recording recording) {
        RunDescription description = plan.description();
        double[] startRates = answered.states().get(0).discharge();
        RunSeries series = series(plan.problem(), answered, recording, plan.limits());
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
                        RecoveryRuns.of(plan, responses, recording, Optional.of(answered))),
                shares.with(judged(answered, series, plan.limits())),
                stations.figures(answered.history().steps(), RunFromResponses.statedError(answered)));
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
        FinishedRun finished = stations.withoutCauses(
                series(plan.problem(), answered, plan.limits()),
                answered.history().steps(),
                RunFromResponses.statedError(answered));
        if (!interference) {
            return finished;
        }
        InterferenceDrawdown split = split(answered, finished.recording());
        InterferenceAnalysis analysis = new InterferenceAnalysis(
                plan.description(), finished.recording(), plan.problem().bores());
        return finished.withFindings(finished.findings().withInterference(analysis.tables(split), split.method()));
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

    /** Margins of a limit over time. */
    LimitMargins margins(Limit limit, FlowProblem problem, SuperposedRun answered) {
        return stations.evaluation(series(problem, answered, List.of(limit)), RunFromResponses.statedError(answered))
                .margins(limit);
    }

    /** What an answer and the runs that limits compare it with give at the stations. */
    RunSeries series(FlowProblem problem, SuperposedRun answered, List<Limit> limits) {
        return series(problem, answered, stations.recorded(answered.states()), limits);
    }

    private RunSeries series(FlowProblem problem, SuperposedRun answered, Recording recording, List<Limit> limits) {
        return new ComparisonRuns(
                        plan.description(),
                        problem,
                        plan.settings().accuracy(),
                        responses.responses(),
                        answered.history(),
                        recording.series())
                .forLimits(limits);
    }

    private List<LimitResult> judged(SuperposedRun answered, RunSeries series, List<Limit> limits) {
        return stations.judged(series, RunFromResponses.statedError(answered), limits);
    }

    /** What is made of heads and discharges at the stations alone. */
    StationAnswer stations() {
        return stations;
    }
}
