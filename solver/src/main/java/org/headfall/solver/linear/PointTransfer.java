package org.headfall.solver.linear;

import java.util.Arrays;

/**
 * Interpolation from a grid with every second column and row to the full one, and its transpose: across rows, then across
 * columns. Cells of odd column and row take no part: their own relaxation, last before residuals are restricted and first
 * after they are corrected, leaves them no residual and sets them anew.
 */
final class PointTransfer {
    private final PointLevel fine;
    private final int halfColumns;
    /** Weights of the even columns before and after an odd column, in even rows. */
    private final float[][] columnBefore;

    private final float[][] columnAfter;
    /** Weights of the even rows below and above an odd row, in even columns. */
    private final float[][] rowBefore;

    private final float[][] rowAfter;

    /** Makes the transfer below a level, without values. */
    PointTransfer(PointLevel fine) {
        this.fine = fine;
        this.halfColumns = fine.halfColumns;
        this.columnBefore = new float[(fine.rows + 1) / 2][halfColumns];
        this.columnAfter = new float[(fine.rows + 1) / 2][halfColumns];
        this.rowBefore = new float[fine.rows / 2][halfColumns];
        this.rowAfter = new float[fine.rows / 2][halfColumns];
    }

    /** Takes over the weights of a fine row. */
    void copyRow(GalerkinProduct columnProduct, GalerkinProduct rowProduct, int row) {
        if (row % 2 == 0) {
            int odd = columnProduct.fine.index(1, row);
            for (int i = 0; i < fine.columns / 2; i++) {
                columnBefore[row / 2][i] = (float) columnProduct.before[odd + 2 * i];
                columnAfter[row / 2][i] = (float) columnProduct.after[odd + 2 * i];
            }
        } else {
            int first = rowProduct.fine.index(0, row);
            for (int i = 0; i < halfColumns; i++) {
                rowBefore[row / 2][i] = (float) rowProduct.before[first + i];
                rowAfter[row / 2][i] = (float) rowProduct.after[first + i];
            }
        }
    }

    /** Sets what is carried to what the residual of the odd row below a coarse row gives to the latter. */
    void beginRestriction(
            int coarseRow, HalfRows values, HalfRows rightHandSide, float[] carried, PointWorkspace work) {
        restrictOddRow(2 * coarseRow - 1, values, rightHandSide, carried, work);
    }

    /**
     * Sets a coarse row to the residual restricted to it.
     *
     * @param carried what the odd row below gives to it, then what the odd row above gives to the next
     */
    void restrict(
            int coarseRow,
            HalfRows values,
            HalfRows rightHandSide,
            HalfRows coarse,
            float[] carried,
            PointWorkspace work) {
        int row = 2 * coarseRow;
        float[] target = work.coarseRow;
        fine.residualOfOdd(row, values, rightHandSide, work.odd, work);
        fine.residualOfEven(row, values, rightHandSide, work.even, work);
        RowKernels.productPlus(target, columnBefore[coarseRow], work.odd, work.even, halfColumns);
        RowKernels.product(work.before, columnAfter[coarseRow], work.odd, halfColumns);
        work.shift(halfColumns);
        RowKernels.add(target, work.shifted, halfColumns);
        RowKernels.add(target, carried, halfColumns);
        restrictOddRow(row + 1, values, rightHandSide, carried, work);
        if (row + 1 < fine.rows) {
            RowKernels.productPlus(target, rowBefore[coarseRow], work.even, target, halfColumns);
        }
        RowKernels.round(target, halfColumns);
        coarse.split(coarseRow, target);
    }

    /** Residual of an odd row, and what it gives to the coarse row above. */
    private void restrictOddRow(
            int row, HalfRows values, HalfRows rightHandSide, float[] carried, PointWorkspace work) {
        if (row < 0 || row >= fine.rows) {
            Arrays.fill(carried, 0);
            return;
        }
        fine.residualOfEven(row, values, rightHandSide, work.even, work);
        RowKernels.product(carried, rowAfter[row / 2], work.even, halfColumns);
    }

    /** Adds the correction of a coarse row to the even row that it stands for, and its part in the odd row above to that. */
    void correct(int coarseRow, HalfRows coarse, HalfRows values, PointWorkspace work) {
        int row = 2 * coarseRow;
        float[] correction = work.interpolated;
        coarse.join(coarseRow, correction);
        RowKernels.roundCorrections(correction, halfColumns);
        RowKernels.add(values.even(row), correction, halfColumns);
        System.arraycopy(correction, 1, work.shifted, 0, halfColumns);
        RowKernels.productsPlus(
                values.odd(row),
                columnBefore[coarseRow],
                correction,
                columnAfter[coarseRow],
                work.shifted,
                values.odd(row),
                halfColumns);
        if (row + 1 < fine.rows) {
            float[] next = work.coarseRow;
            coarse.join(coarseRow + 1, next);
            RowKernels.roundCorrections(next, halfColumns);
            RowKernels.products(work.sum, rowBefore[coarseRow], correction, rowAfter[coarseRow], next, halfColumns);
            RowKernels.roundCorrections(work.sum, halfColumns);
            RowKernels.add(values.even(row + 1), work.sum, halfColumns);
        }
    }
}
