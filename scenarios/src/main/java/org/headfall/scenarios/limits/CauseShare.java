package org.headfall.scenarios.limits;

/**
 * What one cause does to head at the place of a limit: its share of what {@link CauseSplit} says.
 *
 * @param cause name of a bore or spring, or other words
 * @param drawdown drawdown by it (m; of a limit of the rate of decline m/yr), negative where it raises head
 */
public record CauseShare(String cause, double drawdown) {}
