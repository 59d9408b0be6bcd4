package org.headfall.solver.linear;

import java.util.Arrays;

/**
 * Set-up of {@link PointMultigrid} on the finest grid: weights of interpolation and the Galerkin operator of the next
 * grid, straight from the five-point matrix in one walk over its rows.
 *
 * <p>As {@link PointInterpolation} and {@link GalerkinProduct} do for nine points, first every second column is dropped
 * and then every second row, but the half-coarsened operator between is carried along for a few rows only. Arrays over
 * even columns are padded by a zero at both ends, so index i + 1 stands for column 2 i; arrays over odd columns too, with
 * index i + 1 for column 2 i + 1.
 */
final class FinestProduct {
    private static final int ROWS = 4;

    private final FivePointMatrix matrix;
    private final FinestLevel level;
    private final NinePointOperator coarse;
    private final int half;

    FinestProduct(FivePointMatrix matrix, FinestLevel level, NinePointOperator coarse) {
        this.matrix = matrix;
        this.level = level;
        this.coarse = coarse;
        this.half = level.halfColumns;
    }

    /** A row of the half-coarsened operator, and of its interpolation across rows. */
    private static final class HalfRow {
        /** Weights across columns in odd columns. */
        final double[] columnBefore;

        final double[] columnAfter;
        final double[] diagonal;
        final double[] east;
        final double[] north;
        final double[] northEast;
        final double[] northWest;
        /** Weights across rows, in an odd row. */
        final double[] rowBefore;

        final double[] rowAfter;

        HalfRow(int half) {
            columnBefore = new double[half + 2];
            columnAfter = new double[half + 2];
            diagonal = new double[half + 2];
            east = new double[half + 2];
            north = new double[half + 2];
            northEast = new double[half + 2];
            northWest = new double[half + 2];
            rowBefore = new double[half + 2];
            rowAfter = new double[half + 2];
        }
    }

    /** Sets up some coarse rows and the fine rows that they stand for. */
    void setUp(int fromCoarse, int toCoarse) {
        HalfRow[] rows = new HalfRow[ROWS];
        Arrays.setAll(rows, i -> new HalfRow(half));
        int from = Math.max(0, 2 * fromCoarse - 2);
        setColumnWeights(rows[from % ROWS], from);
        for (int row = from; row <= Math.min(level.rows - 1, 2 * toCoarse - 1); row++) {
            HalfRow below = rows[(row + ROWS - 1) % ROWS];
            HalfRow here = rows[row % ROWS];
            HalfRow above = rows[(row + 1) % ROWS];
            setColumnWeights(above, row + 1);
            setRow(here, row);
            setCouplings(here, above, row);
            if (row % 2 == 1 && row > from) {
                setRowWeights(below, here);
            }
            if (row >= 2 * fromCoarse) {
                level.copyRow(matrix, row);
                keepWeights(here, row);
            }
            boolean last = row == level.rows - 1;
            if (row > 2 * fromCoarse && row % 2 == 1) {
                setCoarseRow(rows, row / 2);
            } else if (last && row % 2 == 0) {
                clear(above);
                setCoarseRow(rows, row / 2);
            }
        }
    }

    private static void clear(HalfRow row) {
        Arrays.fill(row.rowBefore, 0);
        Arrays.fill(row.rowAfter, 0);
    }

    private void setColumnWeights(HalfRow target, int row) {
        int columns = matrix.columns();
        if (row >= level.rows) {
            Arrays.fill(target.columnBefore, 0);
            Arrays.fill(target.columnAfter, 0);
            return;
        }
        double[] diagonal = matrix.diagonal();
        double[] east = matrix.east();
        double[] north = matrix.north();
        int first = row * columns;
        for (int i = 0; i < columns / 2; i++) {
            int k = first + 2 * i + 1;
            double before = east[k - 1];
            double after = east[k];
            double alongLine = north[k] + (row > 0 ? north[k - columns] : 0);
            double inverse = PointInterpolation.inverseMiddle(diagonal[k] - alongLine, before + after);
            target.columnBefore[i + 1] = before * inverse;
            target.columnAfter[i + 1] = after * inverse;
        }
    }

    /** Diagonal and couplings within a row. */
    private void setRow(HalfRow target, int row) {
        int columns = matrix.columns();
        double[] diagonal = matrix.diagonal();
        double[] east = matrix.east();
        double[] before = target.columnBefore;
        double[] after = target.columnAfter;
        int first = row * columns;
        double carried = 0;
        for (int i = 0; i < half; i++) {
            int k = first + 2 * i;
            boolean hasNext = 2 * i + 1 < columns;
            double w = before[i + 1];
            double v = after[i + 1];
            double next = hasNext ? diagonal[k + 1] : 0;
            double afterNext = hasNext ? east[k + 1] : 0;
            target.diagonal[i + 1] = diagonal[k] + w * (next * w - 2 * east[k]) + carried;
            target.east[i + 1] = (east[k] - w * next) * v + w * afterNext;
            carried = v * (next * v - 2 * afterNext);
        }
    }

    /** Couplings of a row with the one above. */
    private void setCouplings(HalfRow here, HalfRow above, int row) {
        int columns = matrix.columns();
        double[] north = matrix.north();
        int first = row * columns;
        double carried = 0;
        for (int i = 0; i < half; i++) {
            int k = first + 2 * i;
            double odd = 2 * i + 1 < columns ? north[k + 1] : 0;
            double w = here.columnBefore[i + 1] * odd;
            double v = here.columnAfter[i + 1] * odd;
            here.north[i + 1] = north[k] + w * above.columnBefore[i + 1] + carried;
            here.northEast[i + 1] = w * above.columnAfter[i + 1];
            here.northWest[i + 2 <= half ? i + 2 : 0] = v * above.columnBefore[i + 1];
            carried = v * above.columnAfter[i + 1];
        }
        here.northWest[0] = 0;
    }

    private void setRowWeights(HalfRow below, HalfRow here) {
        for (int i = 1; i <= half; i++) {
            double before = below.north[i] + below.northEast[i - 1] + below.northWest[i + 1];
            double after = here.north[i] + here.northEast[i] + here.northWest[i];
            double alongLine = here.east[i] + here.east[i - 1];
            double inverse = PointInterpolation.inverseMiddle(here.diagonal[i] - alongLine, before + after);
            here.rowBefore[i] = before * inverse;
            here.rowAfter[i] = after * inverse;
        }
    }

    private void keepWeights(HalfRow here, int row) {
        if (row % 2 == 1) {
            for (int i = 0; i < half; i++) {
                level.columnBefore[row / 2][i] = (float) here.columnBefore[i + 1];
                level.columnAfter[row / 2][i] = (float) here.columnAfter[i + 1];
                level.rowBefore[row / 2][i] = (float) here.rowBefore[i + 1];
                level.rowAfter[row / 2][i] = (float) here.rowAfter[i + 1];
            }
        }
    }

    private void setCoarseRow(HalfRow[] rows, int coarseRow) {
        HalfRow last = rows[(2 * coarseRow + ROWS - 1) % ROWS];
        HalfRow kept = rows[2 * coarseRow % ROWS];
        HalfRow next = rows[(2 * coarseRow + 1) % ROWS];
        int place = coarse.index(0, coarseRow) - 1;
        for (int i = 1; i <= half; i++) {
            double w = next.rowBefore[i];
            double v = last.rowAfter[i];
            coarse.diagonal[place + i] = kept.diagonal[i]
                    + w * (next.diagonal[i] * w - 2 * kept.north[i])
                    + v * (last.diagonal[i] * v - 2 * last.north[i]);
            coarse.east[place + i] = kept.east[i]
                    + w * (next.east[i] * next.rowBefore[i + 1] + kept.northWest[i + 1])
                    + kept.northEast[i] * next.rowBefore[i + 1]
                    + v * (last.east[i] * last.rowAfter[i + 1] + last.northEast[i])
                    + last.northWest[i + 1] * last.rowAfter[i + 1];
            coarse.north[place + i] = (kept.north[i] - w * next.diagonal[i]) * next.rowAfter[i] + w * next.north[i];
            coarse.northEast[place + i] =
                    (w * next.east[i] + kept.northEast[i]) * next.rowAfter[i + 1] + w * next.northEast[i];
            coarse.northWest[place + i] =
                    (w * next.east[i - 1] + kept.northWest[i]) * next.rowAfter[i - 1] + w * next.northWest[i];
        }
    }
}
