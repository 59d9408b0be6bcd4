package org.headfall.solver.linear;

/** Factors of the tridiagonal systems along the rows of an operator, {@code L D L^T} (Golub and Van Loan 2013, 4.3.6). */
final class LineFactors {
    final NinePointOperator operator;
    /** Inverse of the pivot D. */
    final double[] inversePivot;
    /** Negative of the entry of L below the diagonal: coupling with the next cell over the pivot. */
    final double[] multiplier;

    final WorkerTeam.RangeTask rowTask = this::factorRows;

    LineFactors(NinePointOperator operator) {
        this.operator = operator;
        this.inversePivot = new double[operator.diagonal.length];
        this.multiplier = new double[operator.diagonal.length];
    }

    private void factorRows(int from, int to) {
        int row = from;
        for (; row + 3 < to; row += 4) {
            factorFourRows(operator.index(0, row));
        }
        for (; row < to; row++) {
            int first = operator.index(0, row);
            double carried = 0;
            for (int k = first; k < first + operator.columns; k++) {
                inversePivot[k] = 1 / (operator.diagonal[k] - carried);
                multiplier[k] = operator.east[k] * inversePivot[k];
                carried = operator.east[k] * multiplier[k];
            }
        }
    }

    /** Four rows at once, whose chains of divisions hide each other's latency. */
    private void factorFourRows(int first) {
        int stride = operator.columns;
        double[] diagonal = operator.diagonal;
        double[] east = operator.east;
        double a = 0;
        double b = 0;
        double c = 0;
        double d = 0;
        for (int i = first; i < first + stride; i++) {
            int j = i + stride;
            int k = j + stride;
            int l = k + stride;
            inversePivot[i] = 1 / (diagonal[i] - a);
            inversePivot[j] = 1 / (diagonal[j] - b);
            inversePivot[k] = 1 / (diagonal[k] - c);
            inversePivot[l] = 1 / (diagonal[l] - d);
            multiplier[i] = east[i] * inversePivot[i];
            multiplier[j] = east[j] * inversePivot[j];
            multiplier[k] = east[k] * inversePivot[k];
            multiplier[l] = east[l] * inversePivot[l];
            a = east[i] * multiplier[i];
            b = east[j] * multiplier[j];
            c = east[k] * multiplier[k];
            d = east[l] * multiplier[l];
        }
    }

    /** Replaces a row of two vectors by the solutions of its tridiagonal system. */
    void solveRow(int row, double[] values, double[] others) {
        int first = operator.index(0, row);
        double a = 0;
        double b = 0;
        for (int k = first; k < first + operator.columns; k++) {
            a = values[k] + multiplier[k - 1] * a;
            b = others[k] + multiplier[k - 1] * b;
            values[k] = a;
            others[k] = b;
        }
        a = 0;
        b = 0;
        for (int k = first + operator.columns - 1; k >= first; k--) {
            a = values[k] * inversePivot[k] + multiplier[k] * a;
            b = others[k] * inversePivot[k] + multiplier[k] * b;
            values[k] = a;
            others[k] = b;
        }
    }

    /** Replaces a row of values by the solution of its tridiagonal system. */
    void solveRow(int row, double[] values) {
        int first = operator.index(0, row);
        int last = first + operator.columns - 1;
        for (int k = first + 1; k <= last; k++) {
            values[k] += multiplier[k - 1] * values[k - 1];
        }
        values[last] *= inversePivot[last];
        for (int k = last - 1; k >= first; k--) {
            values[k] = values[k] * inversePivot[k] + multiplier[k] * values[k + 1];
        }
    }
}
