package org.headfall.scenarios.scenario;

import java.util.OptionalDouble;

/**
 * How alike values at two points are, for kriging.
 *
 * @param range distance beyond which they have nothing in common (m); fitted to the values if empty
 * @param nuggetShare part of the variance that is scatter of measurement, from 0 to less than 1; with 0 the values at the
 *     points are kept
 */
public record VariogramSpecification(OptionalDouble range, double nuggetShare) {
    /** A fitted range and no scatter. */
    public static final VariogramSpecification FITTED = new VariogramSpecification(OptionalDouble.empty(), 0);
}
