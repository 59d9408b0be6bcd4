package org.headfall.scenarios.recording;

import java.util.Arrays;

/**
 * Values of one station over time. Arrays are not copied and must not change.
 *
 * @param days recorded days, increasing; shared by all stations
 * @param head head (m above datum) at each day
 * @param levelInBore water level in the bore (m above datum), NaN if the station is no bore
 * @param discharge discharge (m³/d), NaN if the station is a point
 * @param wantedDischarge discharge asked of a bore (m³/d), NaN if the station is no bore
 */
@SuppressWarnings("ArrayRecordComponent") // series shared by all analyses, never compared
public record StationSeries(
        double[] days, double[] head, double[] levelInBore, double[] discharge, double[] wantedDischarge) {

    /** Checks that all arrays have one value a day. */
    public StationSeries {
        for (double[] values : new double[][] {head, levelInBore, discharge, wantedDischarge}) {
            if (values.length != days.length) {
                throw new IllegalArgumentException(
                        "a series of " + values.length + " values does not fit " + days.length + " days");
            }
        }
    }

    /** Head at a day (m above datum), see {@link #interpolate}. */
    public double headAt(double day) {
        return interpolate(days, head, day);
    }

    /** Level in the bore at a day (m above datum), see {@link #interpolate}. */
    public double levelInBoreAt(double day) {
        return interpolate(days, levelInBore, day);
    }

    /** Discharge at a day (m³/d), see {@link #interpolate}. */
    public double dischargeAt(double day) {
        return interpolate(days, discharge, day);
    }

    /**
     * Value at a day: the recorded one, or on the straight line between the neighbouring records.
     *
     * @param days recorded days, increasing
     * @param values value at each day
     * @param day the day
     * @return the value, NaN outside the recorded days
     */
    public static double interpolate(double[] days, double[] values, double day) {
        int found = Arrays.binarySearch(days, day);
        if (found >= 0) {
            return values[found];
        }
        int after = -found - 1;
        if (after == 0 || after == days.length) {
            return Double.NaN;
        }
        double share = (day - days[after - 1]) / (days[after] - days[after - 1]);
        return values[after - 1] + share * (values[after] - values[after - 1]);
    }
}
