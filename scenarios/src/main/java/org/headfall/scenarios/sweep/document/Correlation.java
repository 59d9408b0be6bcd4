package org.headfall.scenarios.sweep.document;

/**
 * Two variables that tend to be high together, or one high when the other is low.
 *
 * @param first name of a variable
 * @param second name of another
 * @param rank rank correlation (Spearman), between -1 and 1
 */
public record Correlation(String first, String second, double rank) {}
