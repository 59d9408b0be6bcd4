package org.headfall.solver.bore;

/**
 * An operation and the day on which it begins; it lasts until the next phase of the bore.
 *
 * @param fromDay first day (d since the start of the period), may lie before the start
 * @param operation what is done
 */
public record OperatingPhase(double fromDay, Operation operation) {}
