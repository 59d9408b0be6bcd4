package org.headfall.solver.linear;

import java.util.Arrays;

/**
 * Kernels of the multigrid with point smoothing on a nine-point grid, in single precision: relaxation of every second cell of a
 * row. Vectors are padded as in {@link NinePointOperator}.
 */
final class PointLevel {
    final int columns;
    final int rows;
    private final float[] diagonal;
    private final float[] inverseDiagonal;
    private final float[] east;
    private final float[] north;
    private final float[] northEast;
    private final float[] northWest;

    /** Makes a level without values. */
    PointLevel(int columns, int rows) {
        this.columns = columns;
        this.rows = rows;
        int length = NinePointOperator.paddedLength(columns, rows);
        this.inverseDiagonal = new float[length];
        this.east = new float[length];
        this.north = new float[length];
        this.diagonal = new float[length];
        this.northEast = new float[length];
        this.northWest = new float[length];
    }

    /** Returns the place of a row's first cell in the padded vectors. */
    int start(int row) {
        return (row + 1) * columns + 1;
    }

    /** Takes over the values of some rows. */
    void copyRows(NinePointOperator operator, int fromRow, int toRow) {
        int from = start(fromRow);
        int to = start(toRow);
        for (int k = from; k < to; k++) {
            inverseDiagonal[k] = (float) (1 / operator.diagonal[k]);
            east[k] = (float) operator.east[k];
            north[k] = (float) operator.north[k];
            diagonal[k] = (float) operator.diagonal[k];
            northEast[k] = (float) operator.northEast[k];
            northWest[k] = (float) operator.northWest[k];
        }
    }

    /** Relaxes every second cell of a row from a guess of zero everywhere. */
    void relaxFromZero(int row, int parity, float[] values, float[] rightHandSide) {
        int end = start(row + 1);
        for (int k = start(row) + parity; k < end; k += 2) {
            values[k] = inverseDiagonal[k] * rightHandSide[k];
        }
    }

    /** Relaxes the even and then the odd cells of a row from a guess of zero everywhere. */
    void relaxRowFromZero(int row, float[] values, float[] rightHandSide) {
        relaxFromZero(row, 0, values, rightHandSide);
        int end = start(row + 1);
        // A last even cell has no odd cell after it; what is read past the row's ends has coupling zero.
        for (int k = start(row) + 1; k < end; k += 2) {
            float sum = rightHandSide[k] + east[k] * values[k + 1] + east[k - 1] * values[k - 1];
            values[k] = inverseDiagonal[k] * sum;
        }
    }

    /** Sets a row of values to zero. */
    void clearRow(int row, float[] values) {
        Arrays.fill(values, start(row), start(row + 1), 0);
    }

    /** Relaxes every second cell of a row (Gauss-Seidel). */
    void relax(int row, int parity, float[] values, float[] rightHandSide) {
        int end = start(row + 1);
        for (int k = start(row) + parity; k < end; k += 2) {
            values[k] = inverseDiagonal[k] * (rightHandSide[k] + neighbours(k, values));
        }
    }

    private float neighbours(int k, float[] values) {
        int above = k + columns;
        int below = k - columns;
        float sum = east[k] * values[k + 1] + east[k - 1] * values[k - 1];
        sum += north[k] * values[above] + north[below] * values[below];
        sum += northEast[k] * values[above + 1] + northWest[k] * values[above - 1];
        return sum + northEast[below - 1] * values[below - 1] + northWest[below + 1] * values[below + 1];
    }

    /** Residual of a cell. */
    float residual(int k, float[] values, float[] rightHandSide) {
        return rightHandSide[k] + neighbours(k, values) - diagonal[k] * values[k];
    }
}
