package org.headfall.scenarios.run;

/**
 * A case of a document made ready to run.
 *
 * @param name its name, by which limits refer to it
 * @param plan its run
 */
public record CasePlan(String name, RunPlan plan) {

    /** Name of the folder of its results, within that of all cases. */
    public String folder() {
        return name.replace(' ', '-');
    }
}
