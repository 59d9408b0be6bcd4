package org.headfall.scenarios.limits;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.recording.TakenVolumes;

/**
 * What a run recorded at its stations, and what other runs did that it is compared with.
 *
 * @param series series of each station
 * @param others for each comparison with another run, its series of the same stations
 * @param volumes volumes that its bores took; absent if they were not kept
 */
public record RunSeries(
        List<StationSeries> series, Map<Comparison, List<StationSeries>> others, Optional<TakenVolumes> volumes) {

    /** Copies list and map. */
    public RunSeries {
        series = List.copyOf(series);
        others = Map.copyOf(others);
    }

    /**
     * Series without volumes.
     *
     * @param series series of each station
     * @param others for each comparison with another run, its series of the same stations
     */
    public RunSeries(List<StationSeries> series, Map<Comparison, List<StationSeries>> others) {
        this(series, others, Optional.empty());
    }

    /**
     * The same run, compared with further ones.
     *
     * @param further for each comparison, the series of the other run
     */
    public RunSeries with(Map<Comparison, List<StationSeries>> further) {
        Map<Comparison, List<StationSeries>> all = new HashMap<>(further);
        all.putAll(others);
        return new RunSeries(series, all, volumes);
    }

    /** Series of a station in the run that a limit compares with; absent if it needs none, or if that was not made. */
    Optional<StationSeries> comparedWith(Limit limit, int station) {
        return limit.needsOtherRun()
                ? Optional.ofNullable(others.get(limit.comparison())).map(other -> other.get(station))
                : Optional.empty();
    }
}
