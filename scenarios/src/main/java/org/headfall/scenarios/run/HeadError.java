package org.headfall.scenarios.run;

import java.util.Arrays;
import java.util.List;
import org.headfall.scenarios.recording.ReportDate;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.simulation.SimulationObserver;
import org.headfall.solver.simulation.Snapshot;

/**
 * Numerical error of head at the stations during a run: the error that time stepping is estimated to have left in the
 * station's cell, at least the error allowed to one step; at each report date, and the largest of all recorded days.
 */
final class HeadError implements SimulationObserver {

    /** What the error is and what it leaves out. */
    static final String METHOD = "Error of time stepping: the estimates of all steps, carried on through the flow"
            + " equation, at least the error allowed to a step. The errors of the grid and of the distance of a far"
            + " boundary were not determined: run again with --doubts to get them. The error of the data is not in it.";

    private static final String SUPERPOSITION =
            "Error of superposition: discharges that follow head taken as straight in each"
                    + " step, and the largest difference found between heads of the grid and the responses of stations, at least the"
                    + " error promised. The errors of the grid and of the distance of a far boundary were not determined: run again"
                    + " with --doubts to get them. The error of the data is not in it.";

    private final int[] cells;
    private final double accuracy;
    private final double[] largest;
    private final double[] reportDays;
    private final double[][] onReportDay;
    private final String method;
    private double largestAnywhere;

    /**
     * Error at the stations of a run.
     *
     * @param description the run
     * @param accuracy error allowed to one step (m)
     */
    HeadError(RunDescription description, double accuracy) {
        this(description, accuracy, METHOD);
    }

    private HeadError(RunDescription description, double accuracy, String method) {
        this.method = method;
        RectilinearGrid grid = description.grid();
        List<? extends Station> stations = description.stations();
        cells = stations.stream()
                .mapToInt(station -> grid.locate(station.x(), station.y()))
                .toArray();
        this.accuracy = accuracy;
        largest = new double[cells.length];
        Arrays.fill(largest, accuracy);
        reportDays =
                description.reportDates().stream().mapToDouble(ReportDate::day).toArray();
        largestAnywhere = accuracy;
        onReportDay = new double[reportDays.length][];
    }

    /**
     * Error of a run by superposition.
     *
     * @param description the run
     * @param error its error, everywhere and on all days (m)
     */
    static HeadError ofSuperposition(RunDescription description, double error) {
        return new HeadError(description, error, SUPERPOSITION);
    }

    /** How the error was found and what it leaves out, in sentences. */
    String method() {
        return method;
    }

    @Override
    public void recorded(Snapshot snapshot) {
        double[] now = new double[cells.length];
        for (int i = 0; i < cells.length; i++) {
            now[i] = Math.max(accuracy, Math.abs(snapshot.headError()[cells[i]]));
            largest[i] = Math.max(largest[i], now[i]);
        }
        for (double error : snapshot.headError()) {
            largestAnywhere = Math.max(largestAnywhere, Math.abs(error));
        }
        int date = Arrays.binarySearch(reportDays, snapshot.day());
        if (date >= 0) {
            onReportDay[date] = now;
        }
    }

    /** Largest error so far at each station (m). */
    List<Double> atStations() {
        return Arrays.stream(largest).boxed().toList();
    }

    /** Largest error so far of all cells (m). */
    double anywhere() {
        return largestAnywhere;
    }

    /**
     * Error at a report date (m).
     *
     * @param date which of the report dates
     * @param station the station
     * @return the error; the largest of the run if nothing was recorded on that date
     */
    double on(int date, int station) {
        return onReportDay[date] == null ? largest[station] : onReportDay[date][station];
    }
}
