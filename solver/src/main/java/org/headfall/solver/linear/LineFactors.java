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
        for (int row = from; row < to; row++) {
            int first = operator.index(0, row);
            double carried = 0;
            for (int k = first; k < first + operator.columns; k++) {
                inversePivot[k] = 1 / (operator.diagonal[k] - carried);
                multiplier[k] = operator.east[k] * inversePivot[k];
                carried = operator.east[k] * multiplier[k];
            }
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
