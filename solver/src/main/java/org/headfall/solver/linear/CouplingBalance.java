package org.headfall.solver.linear;

/** Figures of a matrix that tell which multigrid suits it. */
final class CouplingBalance {
    /** A cell counts as one-sided above this ratio of its couplings along one axis to those along the other. */
    private static final double ONE_SIDED_RATIO = 8;
    /**
     * Largest part of one-sided cells for which points are smoothed well enough one by one. On the benchmark's variants the
     * part is 0 to 0.002 where they are (8 to 13 iterations) and 0.5 to 1 where they are not (67 to no end).
     */
    private static final double ONE_SIDED_PART = 0.01;

    private final double oneSidedPart;

    CouplingBalance(FivePointMatrix matrix) {
        int columns = matrix.columns();
        int coupled = 0;
        int oneSided = 0;
        for (int k = 0; k < matrix.cells(); k++) {
            double alongX = matrix.east()[k] + (k % columns > 0 ? matrix.east()[k - 1] : 0);
            double alongY = matrix.north()[k] + (k >= columns ? matrix.north()[k - columns] : 0);
            if (alongX + alongY > 0) {
                coupled++;
                boolean balanced = alongX <= ONE_SIDED_RATIO * alongY && alongY <= ONE_SIDED_RATIO * alongX;
                oneSided += balanced ? 0 : 1;
            }
        }
        oneSidedPart = coupled == 0 ? 0 : (double) oneSided / coupled;
    }

    /** Whether smoothing cells one by one will do, so that the quick multigrid suits the matrix. */
    boolean suitsPoints() {
        return oneSidedPart <= ONE_SIDED_PART;
    }
}
