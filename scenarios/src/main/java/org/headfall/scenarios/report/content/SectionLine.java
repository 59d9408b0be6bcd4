package org.headfall.scenarios.report.content;

/**
 * A line on the map along which the ground is cut open.
 *
 * @param name name of the line
 * @param fromX easting of its start (m)
 * @param fromY northing of its start (m)
 * @param toX easting of its end (m)
 * @param toY northing of its end (m)
 */
public record SectionLine(String name, double fromX, double fromY, double toX, double toY) {}
