package org.headfall.scenarios.scenario;

/** What happens at a piece of the rim of the grid. */
public sealed interface BoundaryCondition {
    /**
     * A given head.
     *
     * @param head head (m above datum)
     */
    record FixedHead(TimeCourse head) implements BoundaryCondition {}

    /**
     * A given flow.
     *
     * @param inflow flow into the grid through the whole piece (m3/d), negative out of it
     */
    record GivenFlow(TimeCourse inflow) implements BoundaryCondition {}

    /**
     * A given head some way beyond the rim, behind aquifer like that at the rim.
     *
     * @param head the head there (m above datum)
     * @param distance how far beyond the rim (m)
     */
    record FarHead(TimeCourse head, double distance) implements BoundaryCondition {}
}
