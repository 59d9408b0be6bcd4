package org.headfall.scenarios.scenario;

import java.util.Optional;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.spatial.Extent;

/**
 * How the area is divided into cells.
 *
 * @param extent the area
 * @param cell greatest length of a cell (m)
 * @param refinement where cells are smaller, if anywhere
 * @param place where the document gives it
 */
public record GridSpecification(Extent extent, double cell, Optional<Refinement> refinement, Place place) {
    /** The most cells a grid may have. */
    public static final int MOST_CELLS = 25_000_000;

    /**
     * Smaller cells around points.
     *
     * @param around the points
     * @param downTo length of the cells at the points (m)
     * @param growth largest ratio of the lengths of neighbouring cells
     */
    public record Refinement(Around around, double downTo, double growth) {
        /**
         * Ratio of neighbouring cells where the document gives none: it keeps what bores do at others up to tens of kilometres away
         * within 0.5 % of Theis (measured: 0.3 %; at 1.3 it is 0.6 %).
         */
        public static final double USUAL_GROWTH = 1.2;
    }

    /** What the grid is refined around. */
    public enum Around {
        /** Every bore. */
        BORES,
        /** Every bore and every spring. */
        BORES_AND_SPRINGS
    }
}
