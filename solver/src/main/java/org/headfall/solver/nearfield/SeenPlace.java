package org.headfall.solver.nearfield;

/** A place as the grid sees it: a bore or a point that takes no water. */
public sealed interface SeenPlace permits NearField, ObservedHead {

    /** Cell of the place. */
    int cell();

    /** Weights by which heads of cells give what the grid carries of the head there; they add up to 1. */
    CellWeights weights();

    /**
     * Drawdown here by a unit discharge of a bore, as far as the grid does not carry it. A place within the wall of a bore
     * counts as one at the wall.
     *
     * @param bore the bore
     * @return drawdown per discharge (d/m²); zero if they lie out of reach
     */
    double unresolvedFrom(NearField bore);
}
