package org.headfall.solver.aquifer;

/** Outer side of the grid. */
public enum Side {
    /** First column. */
    WEST,
    /** Last column. */
    EAST,
    /** First row. */
    SOUTH,
    /** Last row. */
    NORTH;

    /** Whether cells along this side are counted by row (west and east) rather than by column. */
    public boolean countedByRow() {
        return this == WEST || this == EAST;
    }
}
