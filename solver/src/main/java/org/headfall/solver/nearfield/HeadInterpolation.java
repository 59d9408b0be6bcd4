package org.headfall.solver.nearfield;

import java.util.Arrays;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.grid.RectilinearGrid;

/**
 * Head at a point from the heads at the centres of its cell and of the eight around it: a parabola along each axis, whose
 * slopes at the faces of the cell are those of the flow through them, so that head may bend at a face where T jumps, and
 * the product of both distances. A face to a cell outside the aquifer has no flow; at the rim of the grid, where a
 * boundary may give water, slope goes on as within.
 */
final class HeadInterpolation {

    private static final int SIDE = 3;
    private static final int MIDDLE = 1;

    private final Aquifer aquifer;
    private final RectilinearGrid grid;
    private final int column;
    private final int row;
    private final double[] weights = new double[SIDE * SIDE];

    private HeadInterpolation(Aquifer aquifer, int cell) {
        this.aquifer = aquifer;
        grid = aquifer.grid();
        column = grid.column(cell);
        row = grid.row(cell);
    }

    /**
     * Weights of the cells around a point.
     *
     * @param aquifer the aquifer
     * @param cell the cell of the point, part of the aquifer
     * @param x easting (m)
     * @param y northing (m)
     * @return weights, which add up to 1
     */
    static CellWeights at(Aquifer aquifer, int cell, double x, double y) {
        HeadInterpolation interpolation = new HeadInterpolation(aquifer, cell);
        interpolation.weigh(x - aquifer.grid().centreX(cell), y - aquifer.grid().centreY(cell));
        return interpolation.withoutZeros();
    }

    private void weigh(double dx, double dy) {
        double width = grid.x().width(column);
        double height = grid.y().width(row);
        weights[SIDE * MIDDLE + MIDDLE] += 1;
        // Along each axis d (slope before + slope after) / 2 + d² (slope after - slope before) / (2 width).
        double bendX = 0.5 * dx * dx / width;
        addSlopeX(MIDDLE, 0.5 * dx - bendX, 0.5 * dx + bendX);
        double bendY = 0.5 * dy * dy / height;
        addSlopeY(0.5 * dy - bendY, 0.5 * dy + bendY);
        addProduct(dx * dy);
    }

    /** How the slope along x changes along y, from the rows on both sides or from one of them and the own row. */
    private void addProduct(double factor) {
        int south = part(MIDDLE, MIDDLE - 1) ? MIDDLE - 1 : MIDDLE;
        int north = part(MIDDLE, MIDDLE + 1) ? MIDDLE + 1 : MIDDLE;
        if (south < north) {
            double distance = grid.y().centre(row + north - MIDDLE) - grid.y().centre(row + south - MIDDLE);
            addSlopeX(north, 0.5 * factor / distance, 0.5 * factor / distance);
            addSlopeX(south, -0.5 * factor / distance, -0.5 * factor / distance);
        }
    }

    /** Adds multiples of the slopes along x at the western and eastern face of the middle cell of a row. */
    private void addSlopeX(int inRow, double west, double east) {
        int cell = cell(MIDDLE, inRow);
        double unit = aquifer.transmissivityX()[cell] * grid.y().width(grid.row(cell));
        int place = SIDE * inRow + MIDDLE;
        boolean onWesternRim = column == 0;
        boolean onEasternRim = column + 1 == grid.columns();
        double toWest = onEasternRim ? west + east : west;
        double toEast = onWesternRim ? west + east : east;
        if (!onWesternRim) {
            addDifference(place - 1, place, toWest * aquifer.eastConductance(cell - 1) / unit);
        }
        if (!onEasternRim) {
            addDifference(place, place + 1, toEast * aquifer.eastConductance(cell) / unit);
        }
    }

    /** Adds multiples of the slopes along y at the southern and northern face of the own cell. */
    private void addSlopeY(double south, double north) {
        int cell = cell(MIDDLE, MIDDLE);
        double unit = aquifer.transmissivityY()[cell] * grid.x().width(column);
        int place = SIDE * MIDDLE + MIDDLE;
        boolean onSouthernRim = row == 0;
        boolean onNorthernRim = row + 1 == grid.rows();
        double toSouth = onNorthernRim ? south + north : south;
        double toNorth = onSouthernRim ? south + north : north;
        if (!onSouthernRim) {
            addDifference(place - SIDE, place, toSouth * aquifer.northConductance(cell - grid.columns()) / unit);
        }
        if (!onNorthernRim) {
            addDifference(place, place + SIDE, toNorth * aquifer.northConductance(cell) / unit);
        }
    }

    private void addDifference(int from, int to, double factor) {
        weights[from] -= factor;
        weights[to] += factor;
    }

    /** Whether a place of the nine is a cell of the aquifer. */
    private boolean part(int inColumn, int inRow) {
        int i = column + inColumn - MIDDLE;
        int j = row + inRow - MIDDLE;
        return i >= 0 && i < grid.columns() && j >= 0 && j < grid.rows() && aquifer.active()[cell(inColumn, inRow)];
    }

    private int cell(int inColumn, int inRow) {
        return grid.cell(column + inColumn - MIDDLE, row + inRow - MIDDLE);
    }

    private CellWeights withoutZeros() {
        int[] cells = new int[weights.length];
        double[] kept = new double[weights.length];
        int n = 0;
        for (int place = 0; place < weights.length; place++) {
            if (weights[place] != 0) {
                cells[n] = cell(place % SIDE, place / SIDE);
                kept[n++] = weights[place];
            }
        }
        return new CellWeights(Arrays.copyOf(cells, n), Arrays.copyOf(kept, n));
    }
}
