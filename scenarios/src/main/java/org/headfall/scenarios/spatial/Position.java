package org.headfall.scenarios.spatial;

/**
 * A point on the ground.
 *
 * @param x easting (m)
 * @param y northing (m)
 */
public record Position(double x, double y) {}
