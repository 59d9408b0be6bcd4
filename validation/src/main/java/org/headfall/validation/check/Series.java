package org.headfall.validation.check;

/**
 * A line or a row of marks in a plot.
 *
 * @param name what it shows
 * @param kind line for published values, marks for ours
 * @param pattern number of its dash pattern or mark, so that series of one plot differ without colour
 * @param x values along the x axis
 * @param y values along the y axis, as many
 */
@SuppressWarnings("ArrayRecordComponent") // handed over to be drawn, never compared
public record Series(String name, Kind kind, int pattern, double[] x, double[] y) {

    /** How a series is drawn. */
    public enum Kind {
        /** A published solution: a line. */
        PUBLISHED,
        /** Our values: marks. */
        OURS
    }

    /** Checks the lengths. */
    public Series {
        if (x.length != y.length) {
            throw new IllegalArgumentException(
                    "series '" + name + "': " + x.length + " x values and " + y.length + " y");
        }
    }
}
