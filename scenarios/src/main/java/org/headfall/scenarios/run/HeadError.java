package org.headfall.scenarios.run;

import java.util.Arrays;
import java.util.List;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.simulation.SimulationObserver;
import org.headfall.solver.simulation.Snapshot;

/**
 * Numerical error of head at the stations during a run: the largest of all recorded days of the error that time
 * stepping is estimated to have left in the station's cell, at least the error allowed to one step.
 */
final class HeadError implements SimulationObserver {

    /** What the error is and what it leaves out. */
    static final String METHOD = "Error of time stepping: the estimates of all steps, carried on through the flow"
            + " equation, at least the error allowed to a step. The error of the grid and of the data is not in it.";

    private final int[] cells;
    private final double[] largest;

    /**
     * Error at the stations of a run.
     *
     * @param description the run
     * @param accuracy error allowed to one step (m)
     */
    HeadError(RunDescription description, double accuracy) {
        RectilinearGrid grid = description.grid();
        List<? extends Station> stations = description.stations();
        cells = stations.stream()
                .mapToInt(station -> grid.locate(station.x(), station.y()))
                .toArray();
        largest = new double[cells.length];
        Arrays.fill(largest, accuracy);
    }

    @Override
    public void recorded(Snapshot snapshot) {
        for (int i = 0; i < cells.length; i++) {
            largest[i] = Math.max(largest[i], Math.abs(snapshot.headError()[cells[i]]));
        }
    }

    /** Largest error so far at each station (m). */
    List<Double> atStations() {
        return Arrays.stream(largest).boxed().toList();
    }
}
