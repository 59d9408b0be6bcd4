package org.headfall.scenarios.run;

import java.util.Arrays;
import java.util.List;
import org.headfall.scenarios.recording.PointHeads;
import org.headfall.solver.flow.SolutionMemory;
import org.headfall.solver.flow.WaterBalance;
import org.headfall.solver.nearfield.ObservedHead;
import org.headfall.solver.response.FieldResponses;
import org.headfall.solver.response.SuperposedFields;
import org.headfall.solver.response.SuperposedRun;

/**
 * Water balances over the whole of runs that superposition has found from one start. The aquifer is solved for once, which
 * takes as long as the unit responses of a run; each balance then costs little.
 */
public final class SuperposedBalances {

    private final RunPlan plan;
    private final FieldResponses responses;
    private final double[] startHead;
    private final double[] reference;

    /**
     * Solves for the aquifer.
     *
     * @param plan the run, as its bores are operated until the start
     * @param memory where solutions are kept
     */
    public SuperposedBalances(RunPlan plan, SolutionMemory memory) {
        this.plan = plan;
        StartState start = StartState.of(plan.problem(), plan.start(), plan.settings());
        startHead = start.heads();
        reference = start.discharges();
        List<ObservedHead> points =
                PointHeads.of(plan.description(), plan.problem().boundaries());
        double end = plan.description().endDay();
        if (plan.start().given().isPresent()) {
            Arrays.fill(reference, 0);
            responses = FieldResponses.fromGiven(plan.problem(), points, startHead, end, memory, plan.settings());
        } else {
            responses = FieldResponses.fromSteady(plan.problem(), points, startHead, end, memory, plan.settings());
        }
    }

    /**
     * The balance of a run from its start to its end.
     *
     * @param run the run at its end, its bores operated as they like after the start
     */
    public WaterBalance of(SuperposedRun run) {
        double end = plan.description().endDay();
        WaterBalance[] whole = new WaterBalance[1];
        new SuperposedFields(responses, run, startHead, reference, new double[] {end})
                .run(plan.settings().threads(), (day, head, balance) -> whole[0] = balance);
        return whole[0];
    }
}
