package org.headfall.scenarios.report.content;

/**
 * A level to compare a water level with.
 *
 * @param label what it is: "outlet", "pump intake", a limit
 * @param level level (m above datum)
 */
public record ReferenceLevel(String label, double level) {}
