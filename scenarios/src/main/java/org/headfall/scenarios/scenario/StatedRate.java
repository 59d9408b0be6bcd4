package org.headfall.scenarios.scenario;

/**
 * A rate with the unit that it was stated in, in which it is spoken of.
 *
 * @param value the rate (m3/d)
 * @param unit the unit
 * @param ofOne what 1 m3/d is in that unit
 */
public record StatedRate(double value, String unit, double ofOne) {}
