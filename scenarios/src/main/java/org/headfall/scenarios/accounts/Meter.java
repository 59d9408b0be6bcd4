package org.headfall.scenarios.accounts;

import java.util.OptionalDouble;
import org.headfall.scenarios.recording.StationSeries;

/**
 * Readings of a meter: all that has ever passed it.
 *
 * @param days days of the readings (d since the start of the run, negative before it), increasing
 * @param volumes what it showed (m³), never falling
 */
@SuppressWarnings("ArrayRecordComponent") // made once and never compared
public record Meter(double[] days, double[] volumes) {

    /** Checks that there is a volume for each day. */
    public Meter {
        if (days.length != volumes.length || days.length == 0) {
            throw new IllegalArgumentException(
                    "need one volume a reading, found " + volumes.length + " for " + days.length);
        }
    }

    /**
     * Volume that passed between two days, on straight lines between the readings.
     *
     * @param from first day
     * @param to last day
     * @return volume (m³); absent unless there are readings on both days or beyond them
     */
    public OptionalDouble between(double from, double to) {
        double volume = StationSeries.interpolate(days, volumes, to) - StationSeries.interpolate(days, volumes, from);
        return Double.isNaN(volume) ? OptionalDouble.empty() : OptionalDouble.of(volume);
    }
}
