package org.headfall.scenarios.comparison;

import java.util.Arrays;
import org.headfall.solver.grid.RectilinearGrid;

/**
 * Heads of one grid at the cell centres of another: bilinear between the four centres around a point, the head of the
 * cell itself where one of the four has none or the point lies outside them.
 */
final class HeadsOnOtherGrid {

    private final RectilinearGrid from;
    private final RectilinearGrid to;
    private final double[] fromX;
    private final double[] fromY;

    HeadsOnOtherGrid(RectilinearGrid from, RectilinearGrid to) {
        this.from = from;
        this.to = to;
        fromX = from.x().centres();
        fromY = from.y().centres();
    }

    /** Heads of each cell of the other grid (m above datum), NaN where the first has no aquifer or does not reach. */
    double[] of(double[] head) {
        double[] moved = new double[to.cellCount()];
        double[] x = to.x().centres();
        double[] y = to.y().centres();
        for (int row = 0; row < y.length; row++) {
            for (int column = 0; column < x.length; column++) {
                moved[row * x.length + column] = at(x[column], y[row], head);
            }
        }
        return moved;
    }

    private double at(double x, double y, double[] head) {
        if (x < from.x().start()
                || x > from.x().end()
                || y < from.y().start()
                || y > from.y().end()) {
            return Double.NaN;
        }
        int west = before(fromX, x);
        int south = before(fromY, y);
        if (west < 0 || south < 0) {
            return head[from.locate(x, y)];
        }
        double right = share(fromX, west, x);
        double upper = share(fromY, south, y);
        int columns = from.columns();
        int cell = south * columns + west;
        double value = (1 - upper) * ((1 - right) * head[cell] + right * head[cell + 1])
                + upper * ((1 - right) * head[cell + columns] + right * head[cell + columns + 1]);
        return Double.isNaN(value) ? head[from.locate(x, y)] : value;
    }

    /** Cell whose centre lies before a place while that of the next does not; -1 beyond the outermost centres. */
    private static int before(double[] centres, double at) {
        if (at < centres[0] || at > centres[centres.length - 1] || centres.length < 2) {
            return -1;
        }
        int found = Arrays.binarySearch(centres, at);
        int cell = found >= 0 ? found : -found - 2;
        return Math.min(cell, centres.length - 2);
    }

    private static double share(double[] centres, int cell, double at) {
        return (at - centres[cell]) / (centres[cell + 1] - centres[cell]);
    }
}
