package org.headfall.solver.linear;

/** Rows that one thread works with while it goes over the rows of {@link HalfRowSystem}s; they hold nothing from row to row. */
final class HalfRowWorkspace {
    /** A row in double precision. */
    final double[] row;
    /** Half a row each. */
    final float[] even;

    final float[] odd;
    final float[] within;
    final float[] between;
    final float[] shifted;

    HalfRowWorkspace(int columns) {
        int half = (columns + 1) / 2;
        row = new double[columns];
        even = new float[half];
        odd = new float[half];
        within = new float[half];
        between = new float[half];
        shifted = new float[half];
    }
}
