package org.headfall.solver.flow;

import java.util.Arrays;

/**
 * Weighted sums of several fields along one row of the grid. The values of a row lie in arrays with one index for all, four of
 * which are added at a time: only then does the compiler vectorise the loop.
 */
final class RowSum {

    private static final int AT_ONCE = 4;

    private final float[][] rows;
    private final int[] sources;
    private final float[] none;
    private final float[] sum;
    private int count;
    private int first;
    private int end;

    /**
     * Sums along rows of a grid.
     *
     * @param columns columns of the grid
     * @param most most fields to be added
     */
    RowSum(int columns, int most) {
        rows = new float[most][columns];
        sources = new int[most];
        none = new float[columns];
        sum = new float[columns];
    }

    /** Takes a row of some fields; false if none of them reaches there. */
    boolean take(WindowedField[] fields, int row) {
        count = 0;
        first = sum.length;
        end = 0;
        for (int source = 0; source < fields.length; source++) {
            if (fields[source].reaches(row)) {
                sources[count++] = source;
                first = Math.min(first, fields[source].window().firstColumn());
                end = Math.max(end, fields[source].window().endColumn());
            }
        }
        for (int i = 0; i < count; i++) {
            Arrays.fill(rows[i], first, end, 0);
            fields[sources[i]].copyRow(row, rows[i]);
        }
        return count > 0;
    }

    /** First column that one of the fields reaches. */
    int first() {
        return first;
    }

    /** Column after the last that one of the fields reaches. */
    int end() {
        return end;
    }

    /** Sum of the fields by their weights, from the first column to the end; changed by the next. */
    float[] weighted(float[] weights) {
        Arrays.fill(sum, first, end, 0);
        for (int i = 0; i < count; i += AT_ONCE) {
            add(weights, i);
        }
        return sum;
    }

    private void add(float[] weights, int i) {
        float[] a = rows[i];
        float[] b = row(i + 1);
        float[] c = row(i + 2);
        float[] d = row(i + 3);
        float ofA = weights[sources[i]];
        float ofB = weight(weights, i + 1);
        float ofC = weight(weights, i + 2);
        float ofD = weight(weights, i + 3);
        for (int k = first; k < end; k++) {
            sum[k] += (ofA * a[k] + ofB * b[k]) + (ofC * c[k] + ofD * d[k]);
        }
    }

    private float[] row(int i) {
        return i < count ? rows[i] : none;
    }

    private float weight(float[] weights, int i) {
        return i < count ? weights[sources[i]] : 0;
    }
}
