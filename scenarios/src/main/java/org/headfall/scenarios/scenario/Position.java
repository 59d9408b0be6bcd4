package org.headfall.scenarios.scenario;

/**
 * A point on the ground.
 *
 * @param x easting (m)
 * @param y northing (m)
 */
public record Position(double x, double y) {}
