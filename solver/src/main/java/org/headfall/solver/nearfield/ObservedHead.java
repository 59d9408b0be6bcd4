package org.headfall.solver.nearfield;

import java.util.List;
import org.headfall.solver.aquifer.Aquifer;

/**
 * Head at a point that takes no water, anywhere in the active aquifer: what the cells around it carry, less the drawdown
 * that bores close by make below the size of a cell. Immutable.
 */
public final class ObservedHead implements SeenPlace {

    private final double x;
    private final double y;
    private final int cell;
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
        this.x = x;
        this.y = y;
        cell = NearField.cellAt(aquifer, x, y);
        weights = HeadInterpolation.at(aquifer, cell, x, y);
        unresolved = bores.stream().mapToDouble(this::unresolvedFrom).toArray();
    }

    private ObservedHead(NearField bore, List<NearField> bores) {
        x = bore.easting();
        y = bore.northing();
        cell = bore.cell();
        weights = bore.weights();
        unresolved = bores.stream().mapToDouble(bore::unresolvedFrom).toArray();
    }

    /**
     * Head at the wall of a bore that takes nothing.
     *
     * @param bore near field of the bore
     * @param bores near field of each bore that takes, in the order of the flow problem
     */
    public static ObservedHead atWall(NearField bore, List<NearField> bores) {
        return new ObservedHead(bore, bores);
    }

    @Override
    public int cell() {
        return cell;
    }

    @Override
    public double unresolvedFrom(NearField bore) {
        return bore.unresolvedAt(x, y, weights);
    }

    @Override
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
