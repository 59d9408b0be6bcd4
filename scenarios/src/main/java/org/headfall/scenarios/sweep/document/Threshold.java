package org.headfall.scenarios.sweep.document;

/**
 * A bound of a kept figure, whose probability of being passed is asked for.
 *
 * @param figure name of the figure
 * @param bound the bound, in the unit of the figure
 * @param above whether passing it means being above it; otherwise below
 */
public record Threshold(String figure, double bound, boolean above) {}
