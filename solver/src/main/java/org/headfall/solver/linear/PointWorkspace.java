package org.headfall.solver.linear;

import java.util.Arrays;

/** Rows that one thread works with on a level of {@link PointCycle}. */
final class PointWorkspace {
    final float[] sum;
    final float[] before;
    /** Half a row moved by one cell. */
    final float[] shifted;

    final float[] even;
    final float[] odd;
    final float[] coarseRow;
    /** One cell longer than a coarse row, the last one zero. */
    final float[] interpolated;
    /** What the last odd row gives to the coarse row after it, one array a system; the only thing kept from row to row. */
    float[][] carried = {};

    /** Makes room for half rows of some length. */
    PointWorkspace(int half) {
        sum = new float[half];
        before = new float[half];
        shifted = new float[half];
        even = new float[half];
        odd = new float[half];
        coarseRow = new float[half + 1];
        interpolated = new float[half + 1];
    }

    /** Makes room for a number of systems. */
    void reserve(int systems) {
        int had = carried.length;
        if (had < systems) {
            carried = Arrays.copyOf(carried, systems);
            for (int l = had; l < systems; l++) {
                carried[l] = new float[sum.length];
            }
        }
    }

    /** Sets {@code shifted[i] = before[i - 1]}. */
    void shift(int half) {
        System.arraycopy(before, 0, shifted, 1, half - 1);
        shifted[0] = 0;
    }
}
