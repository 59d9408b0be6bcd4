package org.headfall.scenarios.limits;

/**
 * The same run with something of the computation changed, to see what that does to the limited values.
 *
 * @param run the changed run
 * @param share the part of a difference that counts as error of the run itself
 */
public record ChangedRun(RunSeries run, double share) {}
