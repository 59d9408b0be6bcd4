package org.headfall.scenarios.run;

import java.util.Optional;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.scenario.Solving;

/**
 * One of many runs, of which figures at bores, springs and points are wanted alone, answered from unit responses that are
 * computed for it: where records are many, that takes fewer solves of the grid than stepping from one to the next.
 */
public final class OwnResponses {

    private OwnResponses() {}

    /**
     * Answers a run, if that is cheaper than to simulate it and exact enough. Whether it is follows from the run alone.
     *
     * @param plan the run
     * @param interference whether drawdown is to be split by cause
     * @return the finished run, without grids and water balance; empty if it is to be simulated
     */
    public static Optional<FinishedRun> answer(RunPlan plan, boolean interference) {
        if (!pays(plan, interference)) {
            return Optional.empty();
        }
        RunFromResponses answer =
                new RunFromResponses(plan, MatchedResponses.of(plan, RunFromResponses.responsesOf(plan)), "this run");
        return answer.reasonToSimulate().isPresent()
                ? Optional.empty()
                : Optional.of(answer.withoutCauses(interference));
    }

    private static boolean pays(RunPlan plan, boolean interference) {
        int causes = plan.problem().bores().size() + plan.problem().springs().size();
        if (causes == 0 || AnswerAtStations.limitBeyond(plan).isPresent() || plan.solving() == Solving.BY_STEPS) {
            return false;
        }
        boolean wantedAnyway = interference || plan.limits().stream().anyMatch(ComparisonRuns::areNeededBy);
        return wantedAnyway || AnswerAtStations.takesFewerSolvesThanSteps(causes, plan);
    }
}
