package org.headfall.solver.linear;

/**
 * Product of a matrix with a vector of {@link HalfRows}, as what passes between neighbouring cells and what the diagonal has in
 * excess of the couplings: {@code y = (d - sum c) x + sum c (x - x')}. The difference of neighbours is taken before it
 * is multiplied, and alike from both sides, so single precision errs by 1e-7 of what passes between cells. Had the
 * diagonal been multiplied, the error would be 1e-7 of the diagonal times x, as large as the product itself where x is smooth.
 */
final class HalfRowProduct {
    private final FivePointMatrix matrix;
    private final FinestLevel level;
    /** Diagonal less the couplings of a cell. */
    private final HalfRows excess;

    private final int half;
    private long version = -1;

    HalfRowProduct(FivePointMatrix matrix, FinestLevel level) {
        this.matrix = matrix;
        this.level = level;
        this.excess = new HalfRows(level.columns, level.rows);
        this.half = level.halfColumns;
    }

    /** Takes the present diagonal into account, if it is another one. */
    void update(WorkerTeam team, int grain) {
        if (version != matrix.version()) {
            version = matrix.version();
            team.split(level.rows, grain, this::setExcess);
        }
    }

    private void setExcess(int from, int to) {
        for (int row = from; row < to; row++) {
            for (int column = 0; column < level.columns; column++) {
                int cell = row * level.columns + column;
                excess.half(row, column % 2)[column / 2] = (float) (matrix.diagonal()[cell] - matrix.couplingSum(cell));
            }
        }
    }

    /** Computes a row of the product and returns its part of the inner product with x, see {@link RowKernels#innerProduct}. */
    double row(HalfRows x, HalfRows product, int row, HalfRowWorkspace work) {
        float[] even = x.even(row);
        float[] odd = x.odd(row);
        withinColumns(x, row, 0, work.even);
        withinColumns(x, row, 1, work.odd);
        RowKernels.flow(work.within, level.eastEven[row], even, odd, half);
        System.arraycopy(even, 1, work.shifted, 0, half);
        RowKernels.flow(work.between, level.eastOdd[row], odd, work.shifted, half);
        System.arraycopy(work.between, 0, work.shifted, 1, half - 1);
        work.shifted[0] = 0;
        float[] evenProduct = product.even(row);
        float[] oddProduct = product.odd(row);
        RowKernels.sumAndDifference(evenProduct, work.even, work.within, work.shifted, half);
        RowKernels.sumAndDifference(oddProduct, work.odd, work.between, work.within, half);
        return RowKernels.innerProduct(even, evenProduct, odd, oddProduct, work.within, work.between, half);
    }

    /** What excess and the rows above and below give to half a row. */
    private void withinColumns(HalfRows x, int row, int parity, float[] target) {
        float[] here = x.half(row, parity);
        RowKernels.productPlusFlow(
                target, excess.half(row, parity), here, level.north(row, parity), x.half(row + 1, parity), half);
        RowKernels.addFlow(target, level.north(row - 1, parity), here, x.half(row - 1, parity), half);
    }
}
