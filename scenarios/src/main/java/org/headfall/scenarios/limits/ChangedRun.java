package org.headfall.scenarios.limits;

/**
 * The same run with something of the computation changed, to see what that does to the limited values.
 *
 * @param run the changed run at its stations
 * @param maps heads of its grid, if limits hold for a part of the map
 * @param share the part of a difference that counts as error of the run itself
 */
public record ChangedRun(RunSeries run, ChangedMaps maps, double share) {

    /**
     * A changed run of which no heads of the grid were kept.
     *
     * @param run the changed run
     * @param share the part of a difference that counts as error of the run itself
     */
    public ChangedRun(RunSeries run, double share) {
        this(run, ChangedMaps.NONE, share);
    }
}
