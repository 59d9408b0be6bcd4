package org.headfall.solver.aquifer;

import org.headfall.solver.schedule.Schedule;
import org.headfall.solver.wording.PlainNumber;

/** What happens at a piece of the outer rim of the grid. Where nothing is given no water passes. */
public sealed interface OuterBoundary {

    /** Name in the water balance. */
    String name();

    /** Where along the rim it lies. */
    SideSegment segment();

    /**
     * Head held at the outer face.
     *
     * @param name name in the water balance
     * @param segment piece of the rim
     * @param head head at the face (m above datum)
     */
    record FixedHead(String name, SideSegment segment, Schedule head) implements OuterBoundary {}

    /**
     * Given flow into the grid, spread over the faces by length.
     *
     * @param name name in the water balance
     * @param segment piece of the rim
     * @param inflow inflow through the whole segment (m³/d), negative out of the grid
     */
    record GivenFlow(String name, SideSegment segment, Schedule inflow) implements OuterBoundary {}

    /**
     * Aquifer that goes on beyond the grid with the transmissivity of the rim cell up to a given head: flow through a
     * face is {@code T L (far head - head at face) / distance}. No storage beyond the grid.
     *
     * @param name name in the water balance
     * @param segment piece of the rim
     * @param head head at the far end (m above datum)
     * @param distance distance from the face to the far end (m), positive
     */
    record FarHead(String name, SideSegment segment, Schedule head, double distance) implements OuterBoundary {

        /** Checks the distance. */
        public FarHead {
            if (!(distance > 0 && Double.isFinite(distance))) {
                throw new IllegalArgumentException(
                        "boundary '" + name + "': distance must be positive, found " + PlainNumber.of(distance) + " m");
            }
        }
    }
}
