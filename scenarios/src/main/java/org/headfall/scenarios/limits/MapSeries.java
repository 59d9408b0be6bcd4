package org.headfall.scenarios.limits;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.headfall.scenarios.recording.HeadGrid;

/**
 * Heads of the grid on some days of a run, and of the runs that it is compared with.
 *
 * @param grids heads of the run in order of time, the first at its start
 * @param others for each comparison with another run, its heads on the same days
 * @param headError largest numerical error of head of all cells and days (m)
 */
public record MapSeries(List<HeadGrid> grids, Map<Comparison, List<HeadGrid>> others, double headError) {
    /** Nothing was kept. */
    public static final MapSeries NONE = new MapSeries(List.of(), Map.of(), 0);

    /** Copies list and map. */
    public MapSeries {
        grids = List.copyOf(grids);
        others = Map.copyOf(others);
    }

    /**
     * The same maps, compared with further runs.
     *
     * @param further for each comparison, heads of the other run on the same days
     */
    public MapSeries with(Map<Comparison, List<HeadGrid>> further) {
        Map<Comparison, List<HeadGrid>> all = new HashMap<>(further);
        all.putAll(others);
        return new MapSeries(grids, all, headError);
    }
}
