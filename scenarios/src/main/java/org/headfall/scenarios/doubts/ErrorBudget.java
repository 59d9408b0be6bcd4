package org.headfall.scenarios.doubts;

import java.util.List;
import java.util.OptionalDouble;

/**
 * Numerical error of head at the stations of a run, part by part.
 *
 * @param lines one line a station and report date, by station, then by date
 * @param stationError largest sum of the parts of head during the run at each station (m), in the order of the stations
 * @param methods how each part was found and what was left out, one sentence or two each
 */
public record ErrorBudget(List<Line> lines, List<Double> stationError, List<String> methods) {

    /** Copies the lists. */
    public ErrorBudget {
        lines = List.copyOf(lines);
        stationError = List.copyOf(stationError);
        methods = List.copyOf(methods);
    }

    /**
     * The error of head at a station on a date. A part that was not determined is absent and counts as nothing.
     *
     * @param station name of the station
     * @param label words for the date
     * @param day the date (d since the start)
     * @param time error left by the time steps (m)
     * @param grid error of the grid (m)
     * @param solver what the linear solver and the rules of bores may leave at most (m)
     * @param boundary change of head if the far heads lay farther out (m)
     */
    public record Line(
            String station,
            String label,
            double day,
            double time,
            OptionalDouble grid,
            double solver,
            OptionalDouble boundary) {

        /** Sum of the parts (m): the error if all of them err the same way. */
        public double together() {
            return time + grid.orElse(0) + solver + boundary.orElse(0);
        }
    }
}
