package org.headfall.scenarios.raster;

import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.headfall.scenarios.spatial.Extent;

/**
 * Values of one quantity on a rectilinear lattice of cells. Immutable, safe to share between threads.
 *
 * <p>Cell (column, row) has index {@code row * columns + column}; row 0 is the southernmost, column 0 the
 * westernmost. NaN is a hole: a cell without data.
 */
public final class Raster {
    /** Relative departure of the cell lengths below which a lattice counts as evenly spaced. */
    private static final double EVEN_TOLERANCE = 1e-6;

    private final double[] edgesX;
    private final double[] edgesY;
    private final double[] values;

    /**
     * A raster from its edges and values, which are copied.
     *
     * @param edgesX ascending cell edges along x (m), columns + 1
     * @param edgesY ascending cell edges along y (m), rows + 1
     * @param values one value a cell, row by row from south to north; NaN for a hole
     * @throws IllegalArgumentException if edges do not ascend or the numbers of values and cells differ
     */
    public Raster(double[] edgesX, double[] edgesY, double[] values) {
        requireAscending("x", edgesX);
        requireAscending("y", edgesY);
        if ((long) (edgesX.length - 1) * (edgesY.length - 1) != values.length) {
            throw new IllegalArgumentException("a raster of " + (edgesX.length - 1) + " columns and "
                    + (edgesY.length - 1) + " rows cannot have " + values.length + " values");
        }
        this.edgesX = edgesX.clone();
        this.edgesY = edgesY.clone();
        this.values = values.clone();
    }

    /**
     * Edges of equal cells.
     *
     * @param first the first edge (m)
     * @param length length of a cell (m)
     * @param cells number of cells
     * @return cells + 1 ascending edges (m)
     */
    public static double[] evenEdges(double first, double length, int cells) {
        double[] edges = new double[cells + 1];
        for (int i = 0; i <= cells; i++) {
            edges[i] = first + i * length;
        }
        return edges;
    }

    /** {@return number of cells along x} */
    public int columns() {
        return edgesX.length - 1;
    }

    /** {@return number of cells along y} */
    public int rows() {
        return edgesY.length - 1;
    }

    /** {@return a copy of the ascending edges along x (m), columns + 1} */
    public double[] edgesX() {
        return edgesX.clone();
    }

    /** {@return a copy of the ascending edges along y (m), rows + 1} */
    public double[] edgesY() {
        return edgesY.clone();
    }

    /** {@return a copy of the values, row by row from south to north} */
    public double[] values() {
        return values.clone();
    }

    /**
     * The value of one cell.
     *
     * @param column column, from 0 in the west
     * @param row row, from 0 in the south
     * @return its value, NaN for a hole
     */
    public double value(int column, int row) {
        return values[row * columns() + column];
    }

    /** The values of a row, from west to east; a copy. */
    double[] row(int row) {
        return Arrays.copyOfRange(values, row * columns(), (row + 1) * columns());
    }

    /**
     * The centre of a column.
     *
     * @param column column, from 0 in the west
     * @return its x (m)
     */
    public double centreX(int column) {
        return 0.5 * (edgesX[column] + edgesX[column + 1]);
    }

    /**
     * The centre of a row.
     *
     * @param row row, from 0 in the south
     * @return its y (m)
     */
    public double centreY(int row) {
        return 0.5 * (edgesY[row] + edgesY[row + 1]);
    }

    /** {@return the rectangle from the outer edges of the outer cells} */
    public Extent extent() {
        return Extent.of(edgesX, edgesY);
    }

    /** {@return the length of every cell along x (m), or nothing if they differ} */
    public OptionalDouble evenWidth() {
        return evenLength(edgesX);
    }

    /** {@return the length of every cell along y (m), or nothing if they differ} */
    public OptionalDouble evenHeight() {
        return evenLength(edgesY);
    }

    /** {@return the number of cells without data} */
    public int holes() {
        int count = 0;
        for (double value : values) {
            if (Double.isNaN(value)) {
                count++;
            }
        }
        return count;
    }

    /**
     * The raster with every value replaced, as for another unit.
     *
     * @param operation from the old value to the new one; not asked for holes
     * @return a raster on the same cells
     */
    public Raster map(DoubleUnaryOperator operation) {
        double[] mapped = values.clone();
        for (int i = 0; i < mapped.length; i++) {
            if (!Double.isNaN(mapped[i])) {
                mapped[i] = operation.applyAsDouble(mapped[i]);
            }
        }
        return new Raster(edgesX, edgesY, mapped);
    }

    @Override
    public String toString() {
        return "raster of " + columns() + " x " + rows() + " cells, " + extent() + ", " + holes() + " without data";
    }

    private static void requireAscending(String axis, double[] edges) {
        if (edges.length < 2) {
            throw new IllegalArgumentException("a raster needs at least two edges along " + axis);
        }
        for (int i = 1; i < edges.length; i++) {
            if (!(edges[i] > edges[i - 1]) || !Double.isFinite(edges[i] - edges[i - 1])) {
                throw new IllegalArgumentException(
                        "raster edges along " + axis + " must ascend, found " + edges[i - 1] + " then " + edges[i]);
            }
        }
    }

    private static OptionalDouble evenLength(double[] edges) {
        int cells = edges.length - 1;
        double mean = (edges[cells] - edges[0]) / cells;
        for (int i = 0; i < cells; i++) {
            if (Math.abs(edges[i + 1] - edges[i] - mean) > EVEN_TOLERANCE * mean) {
                return OptionalDouble.empty();
            }
        }
        return OptionalDouble.of(mean);
    }
}
