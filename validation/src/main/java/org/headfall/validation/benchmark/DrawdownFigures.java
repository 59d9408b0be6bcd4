package org.headfall.validation.benchmark;

/**
 * Three numbers that tell one drawdown from another.
 *
 * @param mean mean over all cells (m)
 * @param bores mean over the 16 bore cells (m)
 * @param max maximum (m)
 */
public record DrawdownFigures(double mean, double bores, double max) {}
