package org.headfall.scenarios.sweep.work;

import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * How a sweep is computed.
 *
 * @param threads runs at a time, at least 1
 * @param part which part of it
 * @param retryFailed whether failed runs are made again
 * @param acceptChanges whether a sweep that is not the one in the store may replace it
 * @param budget time after which no run is begun any more (s), if it is limited
 * @param memory memory that runs may take together (bytes), if it is limited
 */
public record SweepSettings(
        int threads,
        Part part,
        boolean retryFailed,
        boolean acceptChanges,
        OptionalDouble budget,
        OptionalLong memory) {}
