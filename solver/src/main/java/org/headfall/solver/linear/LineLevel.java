package org.headfall.solver.linear;

/**
 * One grid of the multigrid with line smoothing: factors of its rows, couplings between rows and the vectors of each
 * system. Arrays are padded as in {@link NinePointOperator}.
 */
final class LineLevel {
    final int columns;
    final int rows;
    private final float[] inversePivot;
    private final float[] multiplier;
    private final float[] north;
    private final float[] northEast;
    private final float[] northWest;
    private final boolean fivePoint;

    /**
     * Makes a level without values.
     *
     * @param fivePoint whether rows are coupled straight across only, as on the finest grid
     */
    LineLevel(int columns, int rows, boolean fivePoint) {
        this.columns = columns;
        this.rows = rows;
        this.fivePoint = fivePoint;
        int length = NinePointOperator.paddedLength(columns, rows);
        this.inversePivot = new float[length];
        this.multiplier = new float[length];
        this.north = new float[length];
        this.northEast = new float[fivePoint ? 0 : length];
        this.northWest = new float[fivePoint ? 0 : length];
    }

    int index(int column, int row) {
        return (row + 1) * columns + column + 1;
    }

    /** Takes over the values of some rows. */
    void copyRows(NinePointOperator operator, LineFactors factors, int fromRow, int toRow) {
        int from = index(0, fromRow);
        int to = index(0, toRow);
        for (int k = from; k < to; k++) {
            inversePivot[k] = (float) factors.inversePivot[k];
            multiplier[k] = (float) factors.multiplier[k];
            north[k] = (float) operator.north[k];
        }
        for (int k = from; k < to && !fivePoint; k++) {
            northEast[k] = (float) operator.northEast[k];
            northWest[k] = (float) operator.northWest[k];
        }
    }

    /**
     * Sets a row of the values to the right-hand side plus the row's couplings with the rows beside it.
     *
     * @param row row to set
     * @param values vector whose rows beside this one are read
     * @param rightHandSide vector in the same layout
     */
    void addCouplings(int row, float[] values, float[] rightHandSide) {
        int first = index(0, row);
        couple(first, values, values, first);
        for (int k = first; k < first + columns; k++) {
            values[k] += rightHandSide[k];
        }
    }

    /** Sets {@code target} from {@code place} on to the couplings of a row with the values of the rows beside it. */
    void coupleInto(int row, float[] values, float[] target, int place) {
        couple(index(0, row), values, target, place);
    }

    private void couple(int first, float[] values, float[] target, int place) {
        int stride = columns;
        int shift = place - first;
        for (int k = first; k < first + stride; k++) {
            target[k + shift] = north[k] * values[k + stride] + north[k - stride] * values[k - stride];
        }
        for (int k = first; k < first + stride && !fivePoint; k++) {
            int above = k + stride;
            int below = k - stride;
            target[k + shift] += northEast[k] * values[above + 1]
                    + northWest[k] * values[above - 1]
                    + northEast[below - 1] * values[below - 1]
                    + northWest[below + 1] * values[below + 1];
        }
    }

    /** Adds a row of a coarser vector, from {@code place} on, to a row of values. */
    void addRow(int row, float[] values, float[] coarse, int place) {
        int first = index(0, row);
        for (int i = 0; i < columns; i++) {
            values[first + i] += coarse[place + i];
        }
    }

    /** Solves along a row in place. */
    void solveRow(int row, float[] values) {
        int first = index(0, row);
        int last = first + columns - 1;
        float carried = 0;
        for (int k = first; k <= last; k++) {
            carried = values[k] + multiplier[k - 1] * carried;
            values[k] = carried;
        }
        carried = 0;
        for (int k = last; k >= first; k--) {
            carried = values[k] * inversePivot[k] + multiplier[k] * carried;
            values[k] = carried;
        }
    }

    /** Solves along four rows of one colour at once: four chains of dependent products hide each other's latency. */
    void solveFourRows(int row, float[] values) {
        int step = 2 * columns;
        int first = index(0, row);
        float a = 0;
        float b = 0;
        float c = 0;
        float d = 0;
        for (int i = first; i < first + columns; i++) {
            int j = i + step;
            int k = j + step;
            int l = k + step;
            a = values[i] + multiplier[i - 1] * a;
            b = values[j] + multiplier[j - 1] * b;
            c = values[k] + multiplier[k - 1] * c;
            d = values[l] + multiplier[l - 1] * d;
            values[i] = a;
            values[j] = b;
            values[k] = c;
            values[l] = d;
        }
        substituteBack(first, values);
    }

    private void substituteBack(int first, float[] values) {
        int step = 2 * columns;
        float a = 0;
        float b = 0;
        float c = 0;
        float d = 0;
        for (int i = first + columns - 1; i >= first; i--) {
            int j = i + step;
            int k = j + step;
            int l = k + step;
            a = values[i] * inversePivot[i] + multiplier[i] * a;
            b = values[j] * inversePivot[j] + multiplier[j] * b;
            c = values[k] * inversePivot[k] + multiplier[k] * c;
            d = values[l] * inversePivot[l] + multiplier[l] * d;
            values[i] = a;
            values[j] = b;
            values[k] = c;
            values[l] = d;
        }
    }
}
