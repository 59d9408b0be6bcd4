package org.headfall.solver.flow;

import java.util.Arrays;

/**
 * Weighted sums of several fields along one row of the grid, in double precision: weights of solutions at neighbouring shifts
 * cancel, so that summing in single precision moved heads by 0.4 mm. The values of a row lie in arrays with one index for all,
 * four of which are added at a time: only then does the compiler vectorise the loop.
 */
final class RowSum {

    private static final int AT_ONCE = 4;

    private final double[][] rows;
    private final int[] sources;
    private final float[] copied;
    private final double[] none;
    private final double[] sum;
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
        rows = new double[most][columns];
        sources = new int[most];
        copied = new float[columns];
        none = new double[columns];
        sum = new double[columns];
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
            convert(fields[sources[i]], row, rows[i]);
        }
        return count > 0;
    }

    /** Once for all sums of the row: mixed loops are not vectorised. */
    private void convert(WindowedField field, int row, double[] values) {
        field.copyRow(row, copied);
        for (int k = field.window().firstColumn(); k < field.window().endColumn(); k++) {
            values[k] = copied[k];
        }
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
    double[] weighted(double[] weights) {
        Arrays.fill(sum, first, end, 0);
        for (int i = 0; i < count; i += AT_ONCE) {
            add(weights, i);
        }
        return sum;
    }

    private void add(double[] weights, int i) {
        double[] a = rows[i];
        double[] b = row(i + 1);
        double[] c = row(i + 2);
        double[] d = row(i + 3);
        double ofA = weights[sources[i]];
        double ofB = weight(weights, i + 1);
        double ofC = weight(weights, i + 2);
        double ofD = weight(weights, i + 3);
        for (int k = first; k < end; k++) {
            sum[k] += (ofA * a[k] + ofB * b[k]) + (ofC * c[k] + ofD * d[k]);
        }
    }

    private double[] row(int i) {
        return i < count ? rows[i] : none;
    }

    private double weight(double[] weights, int i) {
        return i < count ? weights[sources[i]] : 0;
    }
}
