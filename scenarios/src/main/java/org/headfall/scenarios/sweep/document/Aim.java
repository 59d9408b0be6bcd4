package org.headfall.scenarios.sweep.document;

import java.util.OptionalDouble;

/**
 * What is better.
 *
 * @param figure name of a kept figure
 * @param largest whether larger is better; otherwise smaller is
 * @param reachedIn where choices are compared by the value that they reach, or are better than, in a share of the samples:
 *     that share, more than 0 and less than 1; otherwise by the mean
 */
public record Aim(String figure, boolean largest, OptionalDouble reachedIn) {}
