package org.headfall.solver.linear;

/** Row kernels of the multigrid with line smoothing on one grid; vectors are padded as in {@link NinePointOperator}. */
final class LineLevel {
    final NinePointOperator operator;
    private final LineFactors factors;
    private final int columns;
    private final boolean fivePoint;

    /**
     * Makes the kernels of a level.
     *
     * @param operator the level's operator
     * @param factors factors of its rows
     * @param fivePoint whether rows are coupled straight across only, as on the finest grid
     */
    LineLevel(NinePointOperator operator, LineFactors factors, boolean fivePoint) {
        this.operator = operator;
        this.factors = factors;
        this.columns = operator.columns;
        this.fivePoint = fivePoint;
    }

    int index(int column, int row) {
        return operator.index(column, row);
    }

    /** Sets a row of the values to the right-hand side plus the row's couplings with the rows beside it. */
    void addCouplings(int row, double[] values, double[] rightHandSide) {
        int first = index(0, row);
        if (fivePoint) {
            int stride = columns;
            double[] north = operator.north;
            for (int k = first; k < first + stride; k++) {
                values[k] = rightHandSide[k] + north[k] * values[k + stride] + north[k - stride] * values[k - stride];
            }
        } else {
            addNinePoint(first, values, rightHandSide);
        }
    }

    /** As {@link #coupleNinePoint}, with the right-hand side, into the values themselves. */
    private void addNinePoint(int first, double[] values, double[] rightHandSide) {
        int stride = columns;
        double[] north = operator.north;
        double[] northEast = operator.northEast;
        double[] northWest = operator.northWest;
        double aboveBefore = values[first + stride - 1];
        double above = values[first + stride];
        double belowBefore = values[first - stride - 1];
        double below = values[first - stride];
        for (int k = first; k < first + stride; k++) {
            double aboveAfter = values[k + stride + 1];
            double belowAfter = values[k - stride + 1];
            double upper = north[k] * above + northEast[k] * aboveAfter + northWest[k] * aboveBefore;
            double lower = north[k - stride] * below
                    + northEast[k - stride - 1] * belowBefore
                    + northWest[k - stride + 1] * belowAfter;
            values[k] = rightHandSide[k] + upper + lower;
            aboveBefore = above;
            above = aboveAfter;
            belowBefore = below;
            below = belowAfter;
        }
    }

    /** Sets {@code target} from {@code place} on to the couplings of a row with the values of the rows beside it. */
    void coupleInto(int row, double[] values, double[] target, int place) {
        int first = index(0, row);
        if (fivePoint) {
            int stride = columns;
            int shift = place - first;
            double[] north = operator.north;
            for (int k = first; k < first + stride; k++) {
                target[k + shift] = north[k] * values[k + stride] + north[k - stride] * values[k - stride];
            }
        } else {
            coupleNinePoint(first, values, target, place - first);
        }
    }

    /** Values of the rows beside a row are carried along, so that each is read once. */
    private void coupleNinePoint(int first, double[] values, double[] target, int shift) {
        int stride = columns;
        double[] north = operator.north;
        double[] northEast = operator.northEast;
        double[] northWest = operator.northWest;
        double aboveBefore = values[first + stride - 1];
        double above = values[first + stride];
        double belowBefore = values[first - stride - 1];
        double below = values[first - stride];
        for (int k = first; k < first + stride; k++) {
            double aboveAfter = values[k + stride + 1];
            double belowAfter = values[k - stride + 1];
            double upper = north[k] * above + northEast[k] * aboveAfter + northWest[k] * aboveBefore;
            double lower = north[k - stride] * below
                    + northEast[k - stride - 1] * belowBefore
                    + northWest[k - stride + 1] * belowAfter;
            target[k + shift] = upper + lower;
            aboveBefore = above;
            above = aboveAfter;
            belowBefore = below;
            below = belowAfter;
        }
    }

    /** Adds a row of a coarser vector, from {@code place} on, to a row of values. */
    void addRow(int row, double[] values, double[] coarse, int place) {
        int first = index(0, row);
        for (int i = 0; i < columns; i++) {
            values[first + i] += coarse[place + i];
        }
    }

    /** Solves along a row in place. */
    void solveRow(int row, double[] values) {
        factors.solveRow(row, values);
    }

    /** Solves along four rows of one colour at once: four chains of dependent products hide each other's latency. */
    void solveFourRows(int row, double[] values) {
        int step = 2 * columns;
        int first = index(0, row);
        double[] multiplier = factors.multiplier;
        double a = 0;
        double b = 0;
        double c = 0;
        double d = 0;
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

    private void substituteBack(int first, double[] values) {
        int step = 2 * columns;
        double[] multiplier = factors.multiplier;
        double[] inversePivot = factors.inversePivot;
        double a = 0;
        double b = 0;
        double c = 0;
        double d = 0;
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
