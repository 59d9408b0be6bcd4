package org.headfall.solver.aquifer;

import java.util.Arrays;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.wording.PlainNumber;

/**
 * The confined aquifer on its grid. Arrays hold one value a cell in the order of {@link RectilinearGrid}; they are not
 * copied and must not change. Values of cells that are not active are not used, but must pass the same checks.
 *
 * @param grid the grid
 * @param transmissivityX T along x (m²/d), positive
 * @param transmissivityY T along y (m²/d), positive
 * @param storativity S (-), positive
 * @param top top of the aquifer (m above datum)
 * @param bottom bottom of the aquifer (m above datum), below top
 * @param active whether a cell belongs to the aquifer
 */
@SuppressWarnings("ArrayRecordComponent") // fields of 10⁵ cells, shared and never compared
public record Aquifer(
        RectilinearGrid grid,
        double[] transmissivityX,
        double[] transmissivityY,
        double[] storativity,
        double[] top,
        double[] bottom,
        boolean[] active) {

    /** Checks shapes and values of every cell. */
    public Aquifer {
        int cells = grid.cellCount();
        for (double[] field : new double[][] {transmissivityX, transmissivityY, storativity, top, bottom}) {
            requireShape(cells, field.length);
        }
        requireShape(cells, active.length);
        CellValues.requirePositive("transmissivity along x", "m2/d", transmissivityX);
        CellValues.requirePositive("transmissivity along y", "m2/d", transmissivityY);
        CellValues.requirePositive("storativity", "-", storativity);
        for (int cell = 0; cell < cells; cell++) {
            if (!(bottom[cell] < top[cell])) {
                throw new IllegalArgumentException(
                        "aquifer bottom must lie below its top, found bottom " + PlainNumber.of(bottom[cell])
                                + " m and top " + PlainNumber.of(top[cell]) + " m in cell " + cell);
            }
        }
    }

    private static void requireShape(int cells, int length) {
        if (length != cells) {
            throw new IllegalArgumentException("a field of " + length + " values does not fit " + cells + " cells");
        }
    }

    /**
     * Aquifer with the same T in both directions and S everywhere, from -200 m to -100 m, all cells active.
     *
     * @param grid the grid
     * @param transmissivity T (m²/d), positive
     * @param storativity S (-), positive
     * @return the aquifer
     */
    public static Aquifer homogeneous(RectilinearGrid grid, double transmissivity, double storativity) {
        int cells = grid.cellCount();
        boolean[] active = new boolean[cells];
        Arrays.fill(active, true);
        double[] t = filled(cells, transmissivity);
        return new Aquifer(grid, t, t, filled(cells, storativity), filled(cells, -100), filled(cells, -200), active);
    }

    /**
     * Transmissivity of a cell for flow towards a bore (m²/d): the geometric mean of both directions (Hantush 1966).
     *
     * @param cell the cell
     */
    public double effectiveTransmissivity(int cell) {
        return Math.sqrt(transmissivityX[cell] * transmissivityY[cell]);
    }

    /**
     * Conductance between a cell and its eastern neighbour, by the harmonic mean of their transmissivities: exact for a
     * change of T at the face.
     *
     * @param cell the cell
     * @return flow per metre of head difference (m²/d), zero if one of them is missing or not part of the aquifer
     */
    public double eastConductance(int cell) {
        int column = grid.column(cell);
        if (column + 1 == grid.columns() || !active[cell] || !active[cell + 1]) {
            return 0;
        }
        double resistance = 0.5
                * (grid.x().width(column) / transmissivityX[cell]
                        + grid.x().width(column + 1) / transmissivityX[cell + 1]);
        return grid.y().width(grid.row(cell)) / resistance;
    }

    /**
     * Conductance between a cell and its northern neighbour, like {@link #eastConductance}.
     *
     * @param cell the cell
     * @return flow per metre of head difference (m²/d), zero if one of them is missing or not part of the aquifer
     */
    public double northConductance(int cell) {
        int row = grid.row(cell);
        int north = cell + grid.columns();
        if (row + 1 == grid.rows() || !active[cell] || !active[north]) {
            return 0;
        }
        double resistance =
                0.5 * (grid.y().width(row) / transmissivityY[cell] + grid.y().width(row + 1) / transmissivityY[north]);
        return grid.x().width(grid.column(cell)) / resistance;
    }

    private static double[] filled(int cells, double value) {
        double[] field = new double[cells];
        Arrays.fill(field, value);
        return field;
    }
}
