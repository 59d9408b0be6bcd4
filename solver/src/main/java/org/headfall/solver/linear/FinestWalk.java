package org.headfall.solver.linear;

import java.util.Arrays;

/** The rows that one thread carries along for one system in {@link FinestCycle}, and what it does to them. */
final class FinestWalk {
    /** Rows carried of each quantity; a power of two. */
    private static final int ROWS = 4;

    private final FinestLevel level;
    private final int half;
    /** Values, [row mod 4][parity of the column][index]; one cell longer than half a row, the last one zero. */
    private final float[][][] values;
    /** Residual restricted across columns, or correction interpolated across rows, [row mod 4]. */
    private final float[][] halfRows;

    private final float[] sum;
    private final float[] products;
    private final float[] shifted;
    /** Correction of a coarse row, with a zero at its end, and of the one above. */
    private float[] coarseRow;

    private float[] nextCoarseRow;
    /** The coarse row whose correction stands in {@link #nextCoarseRow}, or -1. */
    private int nextCoarse = -1;

    private HalfRows rightHandSide = new HalfRows(1, 1);
    private HalfRows coarseRightHandSide = rightHandSide;
    private HalfRows coarseSolution = rightHandSide;

    FinestWalk(FinestLevel level) {
        this.level = level;
        this.half = level.halfColumns;
        this.values = new float[ROWS][2][half + 1];
        this.halfRows = new float[ROWS][half + 1];
        this.sum = new float[half];
        this.products = new float[half];
        this.shifted = new float[half];
        this.coarseRow = new float[half + 1];
        this.nextCoarseRow = new float[half + 1];
    }

    /** Begins a walk. */
    void begin(HalfRows newRightHandSide, HalfRows newCoarseRightHandSide, HalfRows newCoarseSolution) {
        rightHandSide = newRightHandSide;
        coarseRightHandSide = newCoarseRightHandSide;
        coarseSolution = newCoarseSolution;
        nextCoarse = -1;
        // Rows beyond the rim have no coupling, but zero times a number that once overflowed is none.
        for (float[][] row : values) {
            Arrays.fill(row[0], 0);
            Arrays.fill(row[1], 0);
        }
    }

    private boolean exists(int row) {
        return row >= 0 && row < level.rows;
    }

    private static int slot(int row) {
        return row & (ROWS - 1);
    }

    private float[] inverse(int row, int parity) {
        return parity == 0 ? level.inverseEven[row] : level.inverseOdd[row];
    }

    /** Relaxes the red cells of a row from zero. */
    void relaxRedFromZero(int row) {
        if (exists(row)) {
            int red = row & 1;
            RowKernels.product(values[slot(row)][red], inverse(row, red), rightHandSide.half(row, red), half);
        }
    }

    /** Relaxes the black cells of a row. */
    void relaxBlack(int row) {
        if (exists(row)) {
            relax(row, 1 - (row & 1));
        }
    }

    /** Relaxes the red cells of a row. */
    void relaxRed(int row) {
        relax(row, row & 1);
    }

    private void relax(int row, int parity) {
        RowKernels.productsPlus(
                sum,
                level.north(row, parity),
                values[slot(row + 1)][parity],
                level.north(row - 1, parity),
                values[slot(row - 1)][parity],
                rightHandSide.half(row, parity),
                half);
        float[] target = values[slot(row)][parity];
        float[] inverse = inverse(row, parity);
        if (parity == 0) {
            float[] odd = values[slot(row)][1];
            shiftProducts(level.eastOdd[row], odd);
            RowKernels.scaledSum(target, inverse, level.eastEven[row], odd, sum, shifted, half);
        } else {
            float[] even = values[slot(row)][0];
            System.arraycopy(even, 1, shifted, 0, half);
            RowKernels.productPlus(sum, level.eastOdd[row], shifted, sum, half);
            RowKernels.productPlus(sum, level.eastEven[row], even, sum, half);
            RowKernels.product(target, inverse, sum, half);
        }
    }

    /** Sets {@code shifted[i] = a[i - 1] b[i - 1]}. */
    private void shiftProducts(float[] a, float[] b) {
        RowKernels.product(products, a, b, half);
        System.arraycopy(products, 0, shifted, 1, half - 1);
        shifted[0] = 0;
    }

    /** Residual of a row, which is left at the red cells, restricted across columns. */
    void restrictColumns(int row) {
        int red = row & 1;
        RowKernels.products(
                sum,
                level.north(row, red),
                values[slot(row + 1)][red],
                level.north(row - 1, red),
                values[slot(row - 1)][red],
                half);
        float[] target = halfRows[slot(row)];
        if (red == 0) {
            float[] odd = values[slot(row)][1];
            shiftProducts(level.eastOdd[row], odd);
            RowKernels.sum(target, level.eastEven[row], odd, sum, shifted, half);
        } else {
            float[] even = values[slot(row)][0];
            System.arraycopy(even, 1, shifted, 0, half);
            RowKernels.productsPlus(sum, level.eastOdd[row], shifted, level.eastEven[row], even, sum, half);
            shiftProducts(level.columnAfter[row / 2], sum);
            RowKernels.productPlus(target, level.columnBefore[row / 2], sum, shifted, half);
        }
    }

    /** Completes a coarse row within some limits when the last fine row that it needs has been restricted. */
    void restrictRows(int row, int fromCoarse, int toCoarse) {
        boolean completes = row % 2 == 1 || row == level.rows - 1;
        int coarse = row / 2;
        if (!completes || coarse < fromCoarse || coarse >= toCoarse) {
            return;
        }
        float[] target = coarseRow;
        System.arraycopy(halfRows[slot(2 * coarse)], 0, target, 0, half);
        if (2 * coarse + 1 < level.rows) {
            RowKernels.productPlus(target, level.rowBefore[coarse], halfRows[slot(2 * coarse + 1)], target, half);
        }
        if (coarse > 0) {
            RowKernels.productPlus(target, level.rowAfter[coarse - 1], halfRows[slot(2 * coarse - 1)], target, half);
        }
        RowKernels.round(target, half);
        coarseRightHandSide.split(coarse, target);
    }

    /** Relaxes the red cells of a row from zero and adds the coarse correction. */
    void correctRed(int row) {
        if (!exists(row)) {
            return;
        }
        int red = row & 1;
        float[] target = values[slot(row)][red];
        float[] given = rightHandSide.half(row, red);
        if (red == 0) {
            takeCoarseRow(row / 2);
            RowKernels.productPlus(target, level.inverseEven[row], given, coarseRow, half);
            return;
        }
        int odd = row / 2;
        nextCoarse = odd + 1;
        readCoarseRow(nextCoarse, nextCoarseRow);
        float[] between = halfRows[slot(row)];
        RowKernels.products(between, level.rowBefore[odd], coarseRow, level.rowAfter[odd], nextCoarseRow, half);
        System.arraycopy(between, 1, shifted, 0, half);
        RowKernels.products(sum, level.columnBefore[odd], between, level.columnAfter[odd], shifted, half);
        RowKernels.productPlus(target, level.inverseOdd[row], given, sum, half);
    }

    /** Brings the correction of a coarse row to {@link #coarseRow}, where the odd row after it finds it, too. */
    private void takeCoarseRow(int row) {
        if (nextCoarse == row) {
            float[] former = coarseRow;
            coarseRow = nextCoarseRow;
            nextCoarseRow = former;
        } else {
            readCoarseRow(row, coarseRow);
        }
    }

    private void readCoarseRow(int row, float[] target) {
        coarseSolution.join(row, target);
        RowKernels.roundCorrections(target, half);
    }

    /** Writes a finished row and returns its inner product with the right-hand side, see {@link RowKernels#innerProduct}. */
    double write(int row, HalfRows correction) {
        float[] even = values[slot(row)][0];
        float[] odd = values[slot(row)][1];
        System.arraycopy(even, 0, correction.even(row), 0, half);
        System.arraycopy(odd, 0, correction.odd(row), 0, half);
        return RowKernels.innerProduct(even, rightHandSide.even(row), odd, rightHandSide.odd(row), sum, products, half);
    }
}
