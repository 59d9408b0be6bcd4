package org.headfall.solver.grid;

/**
 * Rectilinear grid: the product of a west-east axis and a south-north axis. Cell
 * {@code index = row * columns + column}, column 0 in the west, row 0 in the south. Immutable.
 *
 * @param x west-east axis (m)
 * @param y south-north axis (m)
 */
public record RectilinearGrid(Axis x, Axis y) {

    /** Number of columns, counted eastward. */
    public int columns() {
        return x.cells();
    }

    /** Number of rows, counted northward. */
    public int rows() {
        return y.cells();
    }

    /** Number of cells. */
    public int cellCount() {
        return columns() * rows();
    }

    /** Index of the cell in a column and a row. */
    public int cell(int column, int row) {
        return row * columns() + column;
    }

    /** Column of a cell. */
    public int column(int cell) {
        return cell % columns();
    }

    /** Row of a cell. */
    public int row(int cell) {
        return cell / columns();
    }

    /** Area of a cell (m²). */
    public double area(int cell) {
        return x.width(column(cell)) * y.width(row(cell));
    }

    /** Centre of a cell along x (m). */
    public double centreX(int cell) {
        return x.centre(column(cell));
    }

    /** Centre of a cell along y (m). */
    public double centreY(int cell) {
        return y.centre(row(cell));
    }

    /**
     * Cell that holds a point.
     *
     * @param easting position along x (m)
     * @param northing position along y (m)
     * @return the cell, or -1 outside the grid
     */
    public int locate(double easting, double northing) {
        int column = x.locate(easting);
        int row = y.locate(northing);
        return column < 0 || row < 0 ? -1 : cell(column, row);
    }

    @Override
    public String toString() {
        return "grid of " + columns() + " x " + rows() + " cells (x: " + x + "; y: " + y + ")";
    }
}
