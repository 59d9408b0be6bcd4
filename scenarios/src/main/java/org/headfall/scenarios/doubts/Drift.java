package org.headfall.scenarios.doubts;

/**
 * How far heads move by themselves: the run repeated with everything kept as at its start.
 *
 * @param station name of the station that drifts most
 * @param day the report date on which it does (d since the start)
 * @param change head then less head at the start (m)
 */
public record Drift(String station, double day, double change) {}
