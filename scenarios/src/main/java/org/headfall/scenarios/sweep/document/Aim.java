package org.headfall.scenarios.sweep.document;

/**
 * What is better.
 *
 * @param figure name of a kept figure
 * @param largest whether larger is better; otherwise smaller is
 */
public record Aim(String figure, boolean largest) {}
