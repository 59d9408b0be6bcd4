package org.headfall.scenarios.run;

import java.util.ArrayList;
import java.util.List;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.StationSeries;

/**
 * Numerical error of head at the stations, from a second run whose steps may be wrong by four times as much. The
 * integrator is of second order, so a step of length t errs by t³ and their sum by t²: four times the error of a step
 * multiplies that of the run by 4^(2/3) = 2.5, and the two runs differ by 1.5 times the error of the better one. Their
 * whole difference is taken, on the safe side.
 *
 * @param atStations error at each station (m), the largest of all recorded days
 * @param method how it was found and what it leaves out
 */
record HeadError(List<Double> atStations, String method) {

    /** How many times larger the error of a step may be in the second run. */
    static final double MULTIPLE = 4;

    HeadError {
        atStations = List.copyOf(atStations);
    }

    static HeadError between(Recording usual, Recording lessAccurate, double accuracy) {
        List<Double> errors = new ArrayList<>();
        for (int i = 0; i < usual.series().size(); i++) {
            errors.add(Math.max(
                    accuracy,
                    difference(usual.series().get(i), lessAccurate.series().get(i))));
        }
        return new HeadError(
                errors,
                "Error of time stepping: the difference to a second run whose steps may be wrong by four times as"
                        + " much, at least the error allowed to a step. The error of the grid and of the data is not"
                        + " in it.");
    }

    private static double difference(StationSeries one, StationSeries other) {
        double largest = 0;
        for (int k = 0; k < one.days().length; k++) {
            largest = Math.max(largest, Math.abs(one.head()[k] - other.headAt(one.days()[k])));
        }
        return largest;
    }
}
