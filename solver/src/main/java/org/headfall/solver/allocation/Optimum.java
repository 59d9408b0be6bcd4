package org.headfall.solver.allocation;

/**
 * The best values.
 *
 * @param x value of each variable
 * @param value of what was to be small
 */
@SuppressWarnings("ArrayRecordComponent") // read once by whoever asked
public record Optimum(double[] x, double value) {}
