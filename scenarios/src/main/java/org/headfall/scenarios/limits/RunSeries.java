package org.headfall.scenarios.limits;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.headfall.scenarios.recording.StationSeries;

/**
 * What a run recorded at its stations, and what it would have recorded without some bores.
 *
 * @param series series of each station
 * @param without for each comparison with another run, its series of the same stations
 */
public record RunSeries(List<StationSeries> series, Map<Comparison, List<StationSeries>> without) {

    /** Copies list and map. */
    public RunSeries {
        series = List.copyOf(series);
        without = Map.copyOf(without);
    }

    /** Series of a station in the run that a limit compares with; absent if it needs none, or if that was not made. */
    Optional<StationSeries> comparedWith(Limit limit, int station) {
        return limit.needsOtherRun()
                ? Optional.ofNullable(without.get(limit.comparison())).map(other -> other.get(station))
                : Optional.empty();
    }
}
