package org.headfall.scenarios.randomfield;

import org.headfall.scenarios.raster.Raster;
import org.headfall.scenarios.spatial.Extent;

/**
 * Even cells. A cell has number {@code row * columns + column}, row 0 being the southernmost.
 *
 * @param west western edge (m)
 * @param south southern edge (m)
 * @param width length of a cell along x (m)
 * @param height length of a cell along y (m)
 * @param columns cells along x
 * @param rows cells along y
 */
public record Lattice(double west, double south, double width, double height, int columns, int rows) {

    /** More cells along an axis would take more memory than the run itself. */
    public static final int MOST_CELLS = 1024;

    private static final double SHARE_OF_CELL = 1e-6;

    /**
     * Cells over an area.
     *
     * @param area what they have to cover
     * @param width wanted length along x (m); a whole multiple of it is taken where there would be too many cells
     * @param height wanted length along y (m), likewise
     */
    public static Lattice over(Extent area, double width, double height) {
        double wide = width * Math.ceil(cells(area.width(), width) / (double) MOST_CELLS);
        double high = height * Math.ceil(cells(area.height(), height) / (double) MOST_CELLS);
        return new Lattice(
                area.west(), area.south(), wide, high, cells(area.width(), wide), cells(area.height(), high));
    }

    private static int cells(double length, double cell) {
        return (int) Math.max(1, Math.ceil(length / cell - SHARE_OF_CELL));
    }

    /** This lattice with as many cells more on a side as it takes to have a place in it. */
    Lattice with(double x, double y) {
        int column = column(x);
        int row = row(y);
        int before = Math.max(0, -column);
        int below = Math.max(0, -row);
        return new Lattice(
                west - before * width,
                south - below * height,
                width,
                height,
                before + Math.max(columns, column + 1),
                below + Math.max(rows, row + 1));
    }

    int column(double x) {
        return (int) Math.floor((x - west) / width);
    }

    int row(double y) {
        return (int) Math.floor((y - south) / height);
    }

    /** Number of cells. */
    public int count() {
        return columns * rows;
    }

    /**
     * Values as a raster.
     *
     * @param values one a cell
     */
    Raster raster(double[] values) {
        return new Raster(Raster.evenEdges(west, width, columns), Raster.evenEdges(south, height, rows), values);
    }
}
