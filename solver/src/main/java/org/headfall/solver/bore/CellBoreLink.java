package org.headfall.solver.bore;

import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.grid.RectilinearGrid;

/**
 * Link between the head of a grid cell and the head at the wall of a bore in it: the cell's head equals the true steady
 * head at an equivalent radius (Peaceman 1983, SPE Journal 23(3), 531-543), from which the logarithm of radial flow
 * leads down to the bore. Holds for a bore near the centre of its cell among cells of like size and T.
 */
public final class CellBoreLink {

    /** Exact constant of the five-point scheme, exp(-Euler's constant)/2; printed rounded as 0.28. */
    private static final double LATTICE_CONSTANT = 0.280729483568;

    private CellBoreLink() {}

    /**
     * Equivalent radius of a cell.
     *
     * @param width width of the cell along x (m)
     * @param height width of the cell along y (m)
     * @param transmissivityX T along x (m²/d)
     * @param transmissivityY T along y (m²/d)
     * @return radius at which the true head equals the head of the cell (m)
     */
    public static double equivalentRadius(double width, double height, double transmissivityX, double transmissivityY) {
        double ratio = Math.sqrt(transmissivityY / transmissivityX);
        double diagonal = Math.sqrt(ratio * width * width + height * height / ratio);
        return LATTICE_CONSTANT * diagonal / (Math.sqrt(ratio) + Math.sqrt(1 / ratio));
    }

    /**
     * Head lost between the cell and the wall of a bore, per discharge.
     *
     * @param bore the bore
     * @param aquifer the aquifer
     * @return {@code ln(r0/r_w) / (2 pi sqrt(Tx Ty))} (d/m²), positive
     * @throws IllegalArgumentException if the bore is wider than the equivalent radius of its cell
     */
    public static double resistance(Bore bore, Aquifer aquifer) {
        RectilinearGrid grid = aquifer.grid();
        int cell = grid.locate(bore.x(), bore.y());
        double tx = aquifer.transmissivityX()[cell];
        double ty = aquifer.transmissivityY()[cell];
        double radius =
                equivalentRadius(grid.x().width(grid.column(cell)), grid.y().width(grid.row(cell)), tx, ty);
        if (bore.screenRadius() >= radius) {
            throw new IllegalArgumentException("bore '" + bore.name() + "': its radius of " + bore.screenRadius()
                    + " m is too large for its cell, allowed below " + radius + " m: use larger cells");
        }
        return Math.log(radius / bore.screenRadius()) / (2 * Math.PI * Math.sqrt(tx * ty));
    }
}
