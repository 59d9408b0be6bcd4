package org.headfall.validation.benchmark;

import java.util.Arrays;

/** Times of the same work, added one by one. */
final class Medians {
    private double[] seconds = {};

    void add(double value) {
        seconds = Arrays.copyOf(seconds, seconds.length + 1);
        seconds[seconds.length - 1] = value;
    }

    /** Returns the median. */
    double median() {
        double[] sorted = seconds.clone();
        Arrays.sort(sorted);
        int middle = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[middle] : 0.5 * (sorted[middle - 1] + sorted[middle]);
    }
}
