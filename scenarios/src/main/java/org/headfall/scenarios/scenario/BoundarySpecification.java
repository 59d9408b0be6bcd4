package org.headfall.scenarios.scenario;

import java.util.Optional;
import org.headfall.scenarios.problem.Place;
import org.headfall.solver.aquifer.Side;

/**
 * A piece of the rim of the grid through which water passes.
 *
 * @param name its name in tables
 * @param side side of the grid
 * @param part the stretch of that side it takes up; all of it if empty
 * @param condition what happens there
 * @param place where the document gives it
 */
public record BoundarySpecification(
        String name, Side side, Optional<Stretch> part, BoundaryCondition condition, Place place) {
    /**
     * A stretch along a side: eastings for the north and south sides, northings for the west and east sides.
     *
     * @param from lower end (m)
     * @param to upper end (m)
     */
    public record Stretch(double from, double to) {}
}
