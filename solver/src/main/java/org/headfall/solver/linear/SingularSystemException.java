package org.headfall.solver.linear;

/**
 * Thrown where nothing ties the level of a connected group of cells down (no storage, fixed value or outflow that
 * depends on it): the system then has no single answer.
 */
public final class SingularSystemException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final int cell;
    private final int cellsInGroup;

    SingularSystemException(FivePointMatrix matrix, int cell, int cellsInGroup) {
        super("singular system: nothing ties down the level of the " + cellsInGroup
                + " connected cells that include " + matrix.describeCell(cell)
                + "; at least one of them needs storage, a fixed value or an exchange that depends on the level");
        this.cell = cell;
        this.cellsInGroup = cellsInGroup;
    }

    /** Returns the index of one cell of the group, the lowest. */
    public int cell() {
        return cell;
    }

    /** Returns the number of cells in the group. */
    public int cellsInGroup() {
        return cellsInGroup;
    }
}
