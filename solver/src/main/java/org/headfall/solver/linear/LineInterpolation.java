package org.headfall.solver.linear;

/**
 * Interpolation to the rows left out, from one solve along the row for each neighbouring row (Schaffer 1998, "A
 * semicoarsening multigrid method for elliptic partial differential equations with highly discontinuous and anisotropic
 * coefficients"): the exact interpolation {@code T^-1 C} from a neighbour, lumped to the diagonal {@code T^-1 C 1}.
 */
final class LineInterpolation {
    private final GalerkinProduct product;
    private final LineFactors factors;
    final WorkerTeam.RangeTask rowTask = this::interpolateRows;

    /** Prepares the weights of a product that keeps rows. */
    LineInterpolation(GalerkinProduct product, LineFactors factors) {
        this.product = product;
        this.factors = factors;
    }

    /** Returns the number of rows left out, the range of {@link #rowTask}. */
    int rowsLeftOut() {
        return product.fine.rows / 2;
    }

    private void interpolateRows(int from, int to) {
        for (int i = from; i < to; i++) {
            int row = 2 * i + 1;
            int first = product.fine.index(0, row);
            for (int k = first; k < first + product.fine.columns; k++) {
                product.before[k] = product.couplingBefore(k);
                product.after[k] = product.couplingAfter(k);
            }
            factors.solveRow(row, product.before, product.after);
        }
    }
}
