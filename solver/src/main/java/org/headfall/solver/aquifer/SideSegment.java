package org.headfall.solver.aquifer;

import org.headfall.solver.grid.RectilinearGrid;

/**
 * Piece of an outer side of the grid: a run of cells along it.
 *
 * @param side the side
 * @param first first cell along the side, counted from the south (west and east) or from the west (south and north)
 * @param last last cell along the side, included
 */
public record SideSegment(Side side, int first, int last) {

    /** Checks that the run is not empty. */
    public SideSegment {
        if (first < 0 || last < first) {
            throw new IllegalArgumentException(
                    "cells along a side must run upward from 0, found " + first + " to " + last);
        }
    }

    /**
     * The whole of a side.
     *
     * @param side the side
     * @param grid the grid
     * @return segment over all cells of the side
     */
    public static SideSegment whole(Side side, RectilinearGrid grid) {
        return new SideSegment(side, 0, (side.countedByRow() ? grid.rows() : grid.columns()) - 1);
    }

    /** Number of cells. */
    public int length() {
        return last - first + 1;
    }

    /** Index of the cell at a place along the segment, {@code 0 <= place < length()}. */
    public int cell(RectilinearGrid grid, int place) {
        int along = first + place;
        return switch (side) {
            case WEST -> grid.cell(0, along);
            case EAST -> grid.cell(grid.columns() - 1, along);
            case SOUTH -> grid.cell(along, 0);
            case NORTH -> grid.cell(along, grid.rows() - 1);
        };
    }

    /** Length of the outer face of the cell at a place along the segment (m). */
    public double faceLength(RectilinearGrid grid, int place) {
        int along = first + place;
        return side.countedByRow() ? grid.y().width(along) : grid.x().width(along);
    }

    /** Distance from the centre of the segment's cells to their outer face (m). */
    public double centreToFace(RectilinearGrid grid) {
        return 0.5
                * switch (side) {
                    case WEST -> grid.x().width(0);
                    case EAST -> grid.x().width(grid.columns() - 1);
                    case SOUTH -> grid.y().width(0);
                    case NORTH -> grid.y().width(grid.rows() - 1);
                };
    }
}
