package org.headfall.scenarios.recording;

/**
 * A measured head beside which the computed one can be put.
 *
 * @param station name of the bore, spring or protected point
 * @param day when it was measured (d since the start)
 * @param head head of the aquifer (m above datum), of water of the reference temperature
 * @param read what was read off, in words, as it was given
 */
public record Measurement(String station, double day, double head, String read) {}
