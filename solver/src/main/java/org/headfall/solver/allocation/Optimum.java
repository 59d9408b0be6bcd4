package org.headfall.solver.allocation;

/**
 * The best values.
 *
 * @param x value of each variable
 * @param value of what was to be small
 * @param prices by how much the value would fall for a unit more of the bound of each row, in their order, not negative
 */
@SuppressWarnings("ArrayRecordComponent") // read once by whoever asked
public record Optimum(double[] x, double value, double[] prices) {}
