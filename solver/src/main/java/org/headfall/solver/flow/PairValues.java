package org.headfall.solver.flow;

/**
 * A row of numbers, one a shift, for every receptor with itself and with every cause, the same both ways. Causes come
 * first among the receptors.
 */
final class PairValues {

    private final double[][][] rows;

    PairValues(int receptors, int causes, int shifts) {
        rows = new double[receptors][][];
        for (int i = 0; i < receptors; i++) {
            rows[i] = new double[Math.min(i, causes) + 1][shifts];
        }
    }

    /** The row of a pair, one of which is a cause unless they are the same. */
    double[] of(int i, int j) {
        double[][] later = rows[Math.max(i, j)];
        return later[i == j ? later.length - 1 : Math.min(i, j)];
    }
}
