package org.headfall.scenarios.recording;

/**
 * Values of all stations at one recorded day, in the order of the stations; NaN where a value does not exist. Arrays
 * are not copied.
 *
 * @param day days since the start
 * @param head head (m above datum): at the bore wall, in the cell of a spring, at a point
 * @param levelInBore water level in the bore (m above datum)
 * @param discharge discharge of a bore or a spring (m³/d), negative for injection
 * @param wantedDischarge discharge asked of a bore (m³/d)
 */
@SuppressWarnings("ArrayRecordComponent") // handed from the recorder to files, never compared
public record StationValues(
        double day, double[] head, double[] levelInBore, double[] discharge, double[] wantedDischarge) {}
