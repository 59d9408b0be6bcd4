package org.headfall.scenarios.spacing;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;

/**
 * Drawdown by a unit discharge, by distance, as found on a grid, and how far the grid may be off: by no more than it differs
 * from the same on cells twice as wide. Of a method of second order the difference is three times the error (Richardson 1911,
 * The approximate arithmetical solution by finite differences), but the place of a bore in its cells shifts single values, and
 * the difference changes sign; so all of it counts, the largest between half and twice the distance.
 *
 * @param response drawdown per discharge by distance (d/m²), at zero that at the wall
 * @param coarser the same on cells twice as wide; absent if that could not be found
 */
record GriddedResponse(DoubleUnaryOperator response, Optional<DoubleUnaryOperator> coarser) {

    private static final double[] AROUND = {0.5, 0.7, 1, 1.4, 2};

    /** A response that no grid is behind. */
    static GriddedResponse exact(DoubleUnaryOperator response) {
        return new GriddedResponse(response, Optional.of(response));
    }

    /**
     * Error by the grid at a distance (d/m²); NaN if not known.
     *
     * @param distance the distance (m)
     */
    double error(double distance) {
        return coarser.map(other -> Arrays.stream(AROUND)
                        .map(factor -> factor * distance)
                        .map(near -> Math.abs(other.applyAsDouble(near) - response.applyAsDouble(near)))
                        .max()
                        .orElseThrow())
                .orElse(Double.NaN);
    }

    /** Error by the grid at a distance as a share of the response there (-); nothing where nothing is left of that. */
    double relativeError(double distance) {
        double there = response.applyAsDouble(distance);
        return there > 0 || coarser.isEmpty() ? error(distance) / there : 0;
    }

    /** Drawdown per discharge at a distance with all that the grid may be off added (d/m²); NaN if that is not known. */
    double atMost(double distance) {
        return response.applyAsDouble(distance) + error(distance);
    }
}
