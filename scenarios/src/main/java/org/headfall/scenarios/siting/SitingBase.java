package org.headfall.scenarios.siting;

import org.headfall.scenarios.run.RunInMemory;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.RunProgress;
import org.headfall.scenarios.scenario.SitingSpecification;
import org.headfall.solver.response.UnitResponses;

/**
 * What a search for sites starts from.
 *
 * @param run the run with the bores of the document
 * @param heads lowest heads in it
 */
public record SitingBase(RunInMemory run, LowestHeads heads) {

    /**
     * Runs a plan for a search.
     *
     * @param plan the plan
     * @param responses unit responses of its problem
     * @param siting what will be looked for
     * @param progress is told how far the run has come
     */
    public static SitingBase of(
            RunPlan plan, UnitResponses responses, SitingSpecification siting, RunProgress progress) {
        LowestHeads heads = LowestHeads.toRecord(plan, siting);
        return new SitingBase(RunInMemory.of(plan, responses, heads.days(), heads, progress), heads);
    }
}
