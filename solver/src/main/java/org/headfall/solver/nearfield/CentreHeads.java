package org.headfall.solver.nearfield;

import java.util.List;

/**
 * Heads at the centres of cells, for maps, from what the grid carries. The two are the same but in the row of cells along a
 * side of fixed head that a bore stands near: there the head of a cell is that which lets the true flow through its outer
 * face, {@code level - head = flow / conductance of half a cell}, so that the bore takes all of its water from cells. Flow
 * grows along that half cell, and head at the centre is another: with a bore in the first row the drawdown of the next cell
 * but one is 11 to 19 % too large. By image wells (Ferris and others 1962, image-well theory) both are known per discharge.
 * In the cell of a bore the drawdown is one that keeps the volume of its cone, as away from sides. Immutable.
 */
public final class CentreHeads {

    private final CellWeights[] belowCentres;

    /**
     * Heads at centres in a field of bores.
     *
     * @param bores near field of each bore, in the order of the flow problem
     */
    public CentreHeads(List<NearField> bores) {
        belowCentres = bores.stream().map(NearField::belowCentres).toArray(CellWeights[]::new);
    }

    /**
     * Heads at the centres of all cells.
     *
     * @param head head of each cell as the grid carries it (m above datum); not changed
     * @param boreRates discharge of each bore (m³/d); what follows after the bores is not read
     * @return head at the centre of each cell (m above datum), a new array
     */
    public double[] of(double[] head, double[] boreRates) {
        double[] atCentres = head.clone();
        for (int bore = 0; bore < belowCentres.length; bore++) {
            belowCentres[bore].add(boreRates[bore], atCentres);
        }
        return atCentres;
    }

    /**
     * Heads at the centres of some cells.
     *
     * @param cells the cells
     * @param head head of each of these cells as the grid carries it (m above datum); not changed
     * @param boreRates discharge of each bore (m³/d)
     * @return head at the centre of each of these cells (m above datum), a new array
     */
    public double[] in(int[] cells, double[] head, double[] boreRates) {
        double[] atCentres = head.clone();
        for (int bore = 0; bore < belowCentres.length; bore++) {
            int[] changed = belowCentres[bore].cells();
            for (int k = 0; k < changed.length; k++) {
                for (int i = 0; i < cells.length; i++) {
                    if (cells[i] == changed[k]) {
                        atCentres[i] += boreRates[bore] * belowCentres[bore].weights()[k];
                    }
                }
            }
        }
        return atCentres;
    }

    /** Whether the two differ anywhere. */
    public boolean differ() {
        for (CellWeights below : belowCentres) {
            if (below.cells().length > 0) {
                return true;
            }
        }
        return false;
    }
}
