package org.headfall.solver.linear;

/**
 * Interpolation to the cells left out in one direction from the two kept neighbours across: the cell's own equation with
 * the values along its line taken as equal (Alcouffe, Brandt, Dendy and Painter 1981, "The multi-grid method for the
 * diffusion equation with strongly discontinuous coefficients", section 3).
 */
final class PointInterpolation {
    private final GalerkinProduct product;
    private final boolean keepsRows;
    final WorkerTeam.RangeTask rowTask = this::interpolateRows;

    PointInterpolation(GalerkinProduct product, boolean keepsRows) {
        this.product = product;
        this.keepsRows = keepsRows;
    }

    private void interpolateRows(int from, int to) {
        for (int row = from; row < to; row++) {
            if (!keepsRows || row % 2 == 1) {
                int step = keepsRows ? 1 : 2;
                int end = product.fine.index(0, row + 1);
                for (int k = product.fine.index(keepsRows ? 0 : 1, row); k < end; k += step) {
                    interpolate(k);
                }
            }
        }
    }

    private void interpolate(int k) {
        double before = product.couplingBefore(k);
        double after = product.couplingAfter(k);
        double alongLine = product.lineCoupling[k] + product.lineCoupling[k - product.along];
        double inverse = inverseMiddle(product.fine.diagonal[k] - alongLine, before + after);
        product.before[k] = before * inverse;
        product.after[k] = after * inverse;
    }

    /**
     * Returns what couplings across are multiplied by to give weights.
     *
     * @param rest diagonal less the couplings along the line
     * @param across sum of the couplings across
     */
    static double inverseMiddle(double rest, double across) {
        // A coarse operator may have couplings of the wrong sign; weights must not add up to more than one. Where
        // nothing couples across there is nothing to interpolate from.
        double middle = Math.max(rest, across);
        return middle > 0 ? 1 / middle : 0;
    }
}
