package org.headfall.scenarios.limits;

import java.util.List;
import java.util.Map;

/**
 * All that limits of a run are judged by.
 *
 * @param run what it recorded, and the other runs that limits compare it with
 * @param headError numerical error of head by time stepping and solver at each station (m), not negative
 * @param changedRuns runs whose differences to this one are errors of it, each an error of its own
 * @param places parts of the map that limits hold for
 * @param maps heads of the grid
 * @param afterTaking longer runs, by the comparison of the limits that count after taking stops
 */
@SuppressWarnings("ArrayRecordComponent") // made once a run, never compared
public record LimitEvidence(
        RunSeries run,
        double[] headError,
        List<ChangedRun> changedRuns,
        MapPlaces places,
        MapSeries maps,
        Map<Comparison, AfterTaking> afterTaking) {
    /** Copies the list and the map. */
    public LimitEvidence {
        changedRuns = List.copyOf(changedRuns);
        afterTaking = Map.copyOf(afterTaking);
    }

    /**
     * The same with longer runs.
     *
     * @param longer longer runs, by the comparison of the limits that count after taking stops
     */
    public LimitEvidence with(Map<Comparison, AfterTaking> longer) {
        return new LimitEvidence(run, headError, changedRuns, places, maps, longer);
    }
}
