package org.headfall.solver.linear;

/**
 * Kernels of the multigrid with point smoothing on a nine-point grid, in single precision, for half a row at a time: even and odd
 * columns stand apart as in {@link HalfRows}. Within half a row no cell couples with another, so all are relaxed at once.
 */
final class PointLevel {
    final int columns;
    final int rows;
    final int halfColumns;
    private final HalfRows diagonal;
    /** Inverse of the diagonal; zero beyond the rim. */
    private final HalfRows inverse;
    /** Coupling of (column, row) with (column + 1, row). */
    private final HalfRows east;
    /** Coupling of (column, row) with (column, row + 1). */
    private final HalfRows north;
    /** Coupling of (column, row) with (column + 1, row + 1). */
    private final HalfRows northEast;
    /** Coupling of odd column 2 i + 1 and row with (2 i, row + 1), and of even column 2 i + 2 and row with (2 i + 1, row + 1). */
    private final HalfRows northWest;

    /** Makes a level without values. */
    PointLevel(int columns, int rows) {
        this.columns = columns;
        this.rows = rows;
        this.halfColumns = (columns + 1) / 2;
        this.diagonal = new HalfRows(columns, rows);
        this.inverse = new HalfRows(columns, rows);
        this.east = new HalfRows(columns, rows);
        this.north = new HalfRows(columns, rows);
        this.northEast = new HalfRows(columns, rows);
        this.northWest = new HalfRows(columns, rows);
    }

    /** Takes over the values of a row. */
    void copyRow(NinePointOperator operator, int row) {
        int first = operator.index(0, row);
        for (int parity = 0; parity < 2; parity++) {
            float[] diagonals = diagonal.half(row, parity);
            float[] inverses = inverse.half(row, parity);
            float[] easts = east.half(row, parity);
            float[] norths = north.half(row, parity);
            float[] northEasts = northEast.half(row, parity);
            float[] northWests = northWest.half(row, parity);
            for (int i = 0; i < (columns + 1 - parity) / 2; i++) {
                int k = first + 2 * i + parity;
                diagonals[i] = (float) operator.diagonal[k];
                inverses[i] = (float) (1 / operator.diagonal[k]);
                easts[i] = (float) operator.east[k];
                norths[i] = (float) operator.north[k];
                northEasts[i] = (float) operator.northEast[k];
                int column = 2 * i + 2 - parity;
                northWests[i] = column < columns ? (float) operator.northWest[first + column] : 0;
            }
        }
    }

    /** Relaxes a row, even columns before odd ones, from a guess of zero everywhere. */
    void relaxAlone(int row, HalfRows values, HalfRows rightHandSide, PointWorkspace work) {
        float[] even = values.even(row);
        RowKernels.product(even, inverse.even(row), rightHandSide.even(row), halfColumns);
        System.arraycopy(even, 1, work.shifted, 0, halfColumns);
        RowKernels.productsPlus(
                work.sum, east.odd(row), work.shifted, east.even(row), even, rightHandSide.odd(row), halfColumns);
        RowKernels.product(values.odd(row), inverse.odd(row), work.sum, halfColumns);
    }

    /** Relaxes a row between others, even columns before odd ones, from a guess of zero in the row itself. */
    void relaxBetween(int row, HalfRows values, HalfRows rightHandSide, PointWorkspace work) {
        evenFromOtherRows(row, values, rightHandSide, work);
        RowKernels.scaledSum(values.even(row), inverse.even(row), work.sum, work.shifted, halfColumns);
        relaxOdd(row, values, rightHandSide, work);
    }

    /** Relaxes a row, odd columns before even ones (Gauss-Seidel). */
    void relaxBackward(int row, HalfRows values, HalfRows rightHandSide, PointWorkspace work) {
        relaxOdd(row, values, rightHandSide, work);
        evenFromNeighbours(row, values, rightHandSide, work);
        RowKernels.product(values.even(row), inverse.even(row), work.sum, halfColumns);
    }

    private void relaxOdd(int row, HalfRows values, HalfRows rightHandSide, PointWorkspace work) {
        oddFromNeighbours(row, values, rightHandSide, work);
        RowKernels.product(values.odd(row), inverse.odd(row), work.sum, halfColumns);
    }

    /** Sets a target to the residual of a row's even columns. */
    void residualOfEven(int row, HalfRows values, HalfRows rightHandSide, float[] target, PointWorkspace work) {
        evenFromNeighbours(row, values, rightHandSide, work);
        RowKernels.lessProduct(target, work.sum, diagonal.even(row), values.even(row), halfColumns);
    }

    /** Sets a target to the residual of a row's odd columns. */
    void residualOfOdd(int row, HalfRows values, HalfRows rightHandSide, float[] target, PointWorkspace work) {
        oddFromNeighbours(row, values, rightHandSide, work);
        RowKernels.lessProduct(target, work.sum, diagonal.odd(row), values.odd(row), halfColumns);
    }

    /** Right-hand side of even columns and what all eight neighbours add to it, in the sum. */
    private void evenFromNeighbours(int row, HalfRows values, HalfRows rightHandSide, PointWorkspace work) {
        evenFromOtherRows(row, values, rightHandSide, work);
        float[] odd = values.odd(row);
        RowKernels.sum(work.sum, east.even(row), odd, work.sum, work.shifted, halfColumns);
        RowKernels.product(work.before, east.odd(row), odd, halfColumns);
        work.shift(halfColumns);
        RowKernels.add(work.sum, work.shifted, halfColumns);
    }

    /** Right-hand side of even columns and what the rows above and below add to it, in the sum and what is shifted. */
    private void evenFromOtherRows(int row, HalfRows values, HalfRows rightHandSide, PointWorkspace work) {
        float[] oddAbove = values.odd(row + 1);
        float[] oddBelow = values.odd(row - 1);
        RowKernels.products(work.before, northWest.even(row), oddAbove, northEast.odd(row - 1), oddBelow, halfColumns);
        work.shift(halfColumns);
        RowKernels.productsPlus(
                work.sum,
                north.even(row),
                values.even(row + 1),
                north.even(row - 1),
                values.even(row - 1),
                rightHandSide.even(row),
                halfColumns);
        RowKernels.productsPlus(
                work.sum, northEast.even(row), oddAbove, northWest.odd(row - 1), oddBelow, work.sum, halfColumns);
    }

    /** Right-hand side of odd columns and what all eight neighbours add to it, in the sum. */
    private void oddFromNeighbours(int row, HalfRows values, HalfRows rightHandSide, PointWorkspace work) {
        float[] even = values.even(row);
        float[] evenAbove = values.even(row + 1);
        float[] evenBelow = values.even(row - 1);
        float[] sum = work.sum;
        RowKernels.productsPlus(
                sum,
                north.odd(row),
                values.odd(row + 1),
                north.odd(row - 1),
                values.odd(row - 1),
                rightHandSide.odd(row),
                halfColumns);
        RowKernels.productsPlus(
                sum, northWest.odd(row), evenAbove, northEast.even(row - 1), evenBelow, sum, halfColumns);
        System.arraycopy(evenAbove, 1, work.shifted, 0, halfColumns);
        System.arraycopy(evenBelow, 1, work.before, 0, halfColumns);
        RowKernels.productsPlus(
                sum, northEast.odd(row), work.shifted, northWest.even(row - 1), work.before, sum, halfColumns);
        System.arraycopy(even, 1, work.shifted, 0, halfColumns);
        RowKernels.productsPlus(sum, east.even(row), even, east.odd(row), work.shifted, sum, halfColumns);
    }
}
