package org.headfall.validation.check;

import java.util.List;

/**
 * Our values over the published ones.
 *
 * @param title what it shows
 * @param x axis to the right
 * @param y axis upward
 * @param series lines and marks
 */
public record Plot(String title, Scale x, Scale y, List<Series> series) {

    /** Copies the series. */
    public Plot {
        series = List.copyOf(series);
    }

    /**
     * An axis.
     *
     * @param label quantity and unit
     * @param logarithmic whether it is logarithmic
     */
    public record Scale(String label, boolean logarithmic) {

        /** A linear axis. */
        public static Scale linear(String label) {
            return new Scale(label, false);
        }

        /** A logarithmic axis; values that are not positive are left out. */
        public static Scale logarithmic(String label) {
            return new Scale(label, true);
        }
    }
}
