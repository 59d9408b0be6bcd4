package org.headfall.solver.nearfield;

import java.util.List;
import org.headfall.solver.aquifer.Aquifer;

/**
 * Head at a point that takes no water, anywhere in the active aquifer: what the cells around it carry, less the drawdown
 * that bores close by make below the size of a cell. Immutable.
 */
public final class ObservedHead {

    private final CellWeights weights;
    private final double[] unresolved;

    /**
     * Head at a point.
     *
     * @param aquifer the aquifer
     * @param x easting of the point (m)
     * @param y northing (m)
     * @param bores near field of each bore, in the order of the flow problem
     * @throws IllegalArgumentException if the point lies outside the grid or in a cell that is not part of the aquifer
     */
    public ObservedHead(Aquifer aquifer, double x, double y, List<NearField> bores) {
        weights = HeadInterpolation.at(aquifer, NearField.cellAt(aquifer, x, y), x, y);
        unresolved = bores.stream()
                .mapToDouble(bore -> bore.unresolvedAt(x, y, weights))
                .toArray();
    }

    /** Weights of the cells around the point; they add up to 1. */
    public CellWeights weights() {
        return weights;
    }

    /**
     * Drawdown at the point by a unit discharge, as far as the grid does not carry it (d/m²).
     *
     * @param cause the cause: bores first, then springs, whose effect the grid carries whole
     */
    public double unresolved(int cause) {
        return cause < unresolved.length ? unresolved[cause] : 0;
    }

    /**
     * Head at the point.
     *
     * @param head head of each cell (m above datum)
     * @param boreRates discharge of each bore (m³/d)
     * @return head (m above datum)
     */
    public double at(double[] head, double[] boreRates) {
        double sum = weights.of(head);
        for (int bore = 0; bore < unresolved.length; bore++) {
            sum -= unresolved[bore] * boreRates[bore];
        }
        return sum;
    }
}
