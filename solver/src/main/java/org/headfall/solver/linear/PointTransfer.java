package org.headfall.solver.linear;

/**
 * Interpolation from a grid with every second column and row to the full one, and its transpose. It runs by way of a
 * half-coarsened vector with every second column and all rows, padded like the others: first across rows, then across
 * columns.
 */
final class PointTransfer {
    private final PointLevel fine;
    private final int halfColumns;
    private final float[] columnBefore;
    private final float[] columnAfter;
    private final float[] rowBefore;
    private final float[] rowAfter;

    /** Makes the transfer below a level, without values. */
    PointTransfer(PointLevel fine) {
        this.fine = fine;
        this.halfColumns = (fine.columns + 1) / 2;
        int length = NinePointOperator.paddedLength(halfColumns, fine.rows);
        this.columnBefore = new float[length];
        this.columnAfter = new float[length];
        this.rowBefore = new float[length];
        this.rowAfter = new float[length];
    }

    int halfLength() {
        return columnBefore.length;
    }

    private int halfStart(int row) {
        return (row + 1) * halfColumns + 1;
    }

    /** Takes over the weights of some fine rows. */
    void copyRows(GalerkinProduct columnProduct, GalerkinProduct rowProduct, int fromRow, int toRow) {
        for (int row = fromRow; row < toRow; row++) {
            int half = halfStart(row);
            int odd = fine.start(row) + 1;
            for (int i = 0; i < fine.columns / 2; i++) {
                columnBefore[half + i] = (float) columnProduct.before[odd + 2 * i];
                columnAfter[half + i] = (float) columnProduct.after[odd + 2 * i];
            }
            for (int k = half; k < half + halfColumns; k++) {
                rowBefore[k] = (float) rowProduct.before[k];
                rowAfter[k] = (float) rowProduct.after[k];
            }
        }
    }

    /** Residual of a fine row, restricted across columns. */
    void restrictColumns(int row, float[] values, float[] rightHandSide, float[] half) {
        int k = fine.start(row);
        int h = halfStart(row);
        float carried = 0;
        for (int i = 0; i < fine.columns / 2; i++, k += 2) {
            float odd = fine.residual(k + 1, values, rightHandSide);
            half[h + i] = fine.residual(k, values, rightHandSide) + columnBefore[h + i] * odd + carried;
            carried = columnAfter[h + i] * odd;
        }
        if (fine.columns % 2 == 1) {
            half[h + halfColumns - 1] = fine.residual(k, values, rightHandSide) + carried;
        }
    }

    /** Sets a coarse row to the half-coarsened vector restricted across rows. */
    void restrictRows(int coarseRow, float[] half, float[] coarse) {
        int c = halfStart(coarseRow);
        int h = halfStart(2 * coarseRow);
        int above = h + halfColumns;
        int below = h - halfColumns;
        for (int i = 0; i < halfColumns; i++) {
            coarse[c + i] = RowKernels.rounded(
                    half[h + i] + rowBefore[above + i] * half[above + i] + rowAfter[below + i] * half[below + i]);
        }
    }

    /** Interpolates a coarse vector to a row of the half-coarsened vector. */
    void interpolateRows(int row, float[] coarse, float[] half) {
        int h = halfStart(row);
        int c = halfStart(row / 2);
        if (row % 2 == 0) {
            for (int i = 0; i < halfColumns; i++) {
                half[h + i] = RowKernels.roundedCorrection(coarse[c + i]);
            }
            return;
        }
        int next = c + halfColumns;
        for (int i = 0; i < halfColumns; i++) {
            half[h + i] =
                    RowKernels.roundedCorrection(rowBefore[h + i] * coarse[c + i] + rowAfter[h + i] * coarse[next + i]);
        }
    }

    /** Adds the half-coarsened vector, interpolated across columns, to a fine row. */
    void addColumns(int row, float[] half, float[] values) {
        int k = fine.start(row);
        int h = halfStart(row);
        for (int i = 0; i < halfColumns; i++) {
            values[k + 2 * i] += half[h + i];
        }
        for (int i = 0; i < fine.columns / 2; i++) {
            values[k + 2 * i + 1] += columnBefore[h + i] * half[h + i] + columnAfter[h + i] * half[h + i + 1];
        }
    }
}
