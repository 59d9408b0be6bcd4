package org.headfall.scenarios.randomfield;

/**
 * A value that has been measured.
 *
 * @param x easting (m)
 * @param y northing (m)
 * @param value the value, positive
 */
public record KnownValue(double x, double y, double value) {}
