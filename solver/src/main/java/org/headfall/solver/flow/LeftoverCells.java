package org.headfall.solver.flow;

import java.util.function.IntToDoubleFunction;

/**
 * Two cells that take what rounding leaves over of a change of all heads: the firmest, whose head it moves least, and, for what
 * the last place of that head is too coarse for, a softer one.
 *
 * @param firmest the cell that gives most water per metre
 * @param softest the cell that gives least of those that give at least {@link #LEAST_SHARE} of the firmest
 */
record LeftoverCells(int firmest, int softest) {

    /** So the head of the softer cell moves by at most 1e5 of the firmest head's last places, some 1e-9 m. */
    private static final double LEAST_SHARE = 1e-5;

    /**
     * Chooses the two.
     *
     * @param cells number of cells
     * @param firmness water that a cell gives per metre, zero if none
     */
    static LeftoverCells of(int cells, IntToDoubleFunction firmness) {
        int firmest = 0;
        for (int cell = 0; cell < cells; cell++) {
            if (firmness.applyAsDouble(cell) > firmness.applyAsDouble(firmest)) {
                firmest = cell;
            }
        }
        double least = LEAST_SHARE * firmness.applyAsDouble(firmest);
        int softest = firmest;
        for (int cell = 0; cell < cells; cell++) {
            double own = firmness.applyAsDouble(cell);
            if (own >= least && own < firmness.applyAsDouble(softest)) {
                softest = cell;
            }
        }
        return new LeftoverCells(firmest, softest);
    }

    /**
     * Gives water to the two.
     *
     * @param water the water, in the unit of firmness times metres
     * @param firmness what they were chosen by
     * @param head heads, changed (m)
     */
    void take(double water, IntToDoubleFunction firmness, double[] head) {
        double left = water - given(water, firmness.applyAsDouble(firmest), firmest, head);
        given(left, firmness.applyAsDouble(softest), softest, head);
    }

    /** Gives water to one cell; returns how much it took, by the last place of its head. */
    private static double given(double water, double firmness, int cell, double[] head) {
        double former = head[cell];
        head[cell] += water / firmness;
        return firmness * (head[cell] - former);
    }
}
