package org.headfall.solver.allocation;

import java.util.Map;

/**
 * The best values.
 *
 * @param x value of each variable
 * @param value of what was to be small
 * @param prices for each row that binds, by how much the value would fall for a unit more of its bound, not negative
 */
@SuppressWarnings("ArrayRecordComponent") // read once by whoever asked
public record Optimum(double[] x, double value, Map<String, Double> prices) {

    /** Copies the map. */
    public Optimum {
        prices = Map.copyOf(prices);
    }
}
