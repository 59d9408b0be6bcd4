package org.headfall.scenarios.interpolation;

/**
 * Values on cells and how they came about.
 *
 * @param cellValues one value a cell, row by row from south to north
 * @param method how they were found, which may differ from what was asked for where there are too few points
 */
@SuppressWarnings("ArrayRecordComponent") // a field of 10⁵ cells, shared and never compared
public record SpreadValues(double[] cellValues, Method method) {
    /** How values were spread. */
    public sealed interface Method {}

    /** All points have the same value, and so have all cells. */
    public record SameEverywhere() implements Method {}

    /** Each cell has the value of the point nearest to its centre. */
    public record Nearest() implements Method {}

    /**
     * Means weighted by the inverse square of the distance.
     *
     * @param scale of the values or of their logarithms
     * @param tooFewPoints whether kriging was asked for, which takes three points that differ
     */
    public record InverseDistanceSquared(ValueScale scale, boolean tooFewPoints) implements Method {}

    /**
     * Ordinary kriging.
     *
     * @param scale of the values or of their logarithms
     * @param variogram the variogram, of the values or of their logarithms
     * @param rangeFitted whether its range was fitted; its sill always is, which kriged values do not depend on
     */
    public record Kriging(ValueScale scale, ExponentialVariogram variogram, boolean rangeFitted) implements Method {}
}
