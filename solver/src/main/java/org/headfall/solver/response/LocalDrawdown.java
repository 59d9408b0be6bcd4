package org.headfall.solver.response;

import java.util.Arrays;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.headfall.solver.linear.WorkerTeam;

/**
 * A first estimate of the drawdown at the wall of a bore in any cell by its own unit discharge, from what is around it:
 * {@code s = 1/(2 pi) sum ln(r_k+1 / r_k) / T_k} over square rings that double in width, with the geometric mean of T in
 * each ring (the effective T of a plane with random T, Matheron 1967) and the arithmetic mean of S and of leakance, for storage
 * and leakage of cells side by side add up by area, out to the radius of influence {@code 1.5 sqrt(T t /
 * S)} (Cooper and Jacob 1946) or {@code 1.123 sqrt(T/leakance)} (de Glee 1930 in the form for small distances), whichever
 * is shorter, their inverse squares added. Sides of the aquifer and storage of the sealing bed are not in it.
 */
final class LocalDrawdown {

    private static final double COOPER_JACOB = 1.5;
    private static final double DE_GLEE = 1.123;
    private static final int MOST_RINGS = 40;

    private final RectilinearGrid grid;
    /** Sums over all active cells south-west of each corner, times area; those below alike. */
    private final double[] logT;

    private final double[] storativity;
    private final double[] leakance;

    private final double[] areas;

    /**
     * Number of active cells south-west of each corner. Whether a ring has any is asked of these: differences of sums of areas
     * are exact only by chance.
     */
    private final int[] cells;

    private final double[] ownT;
    private final boolean[] active;

    LocalDrawdown(FlowProblem problem) {
        Aquifer aquifer = problem.aquifer();
        grid = aquifer.grid();
        active = aquifer.active();
        ownT = new double[grid.cellCount()];
        double[] logs = new double[grid.cellCount()];
        double[] storage = new double[grid.cellCount()];
        double[] leak = new double[grid.cellCount()];
        double[] one = new double[grid.cellCount()];
        Arrays.fill(one, 1);
        for (int cell = 0; cell < ownT.length; cell++) {
            if (active[cell]) {
                ownT[cell] = aquifer.effectiveTransmissivity(cell);
                logs[cell] = Math.log(ownT[cell]);
                storage[cell] = aquifer.storativity()[cell];
                int c = cell;
                leak[cell] = problem.sealingBed().map(bed -> bed.leakance(c)).orElse(0.0);
            }
        }
        logT = sums(logs);
        storativity = sums(storage);
        leakance = sums(leak);
        areas = sums(one);
        cells = counts();
    }

    private int[] counts() {
        int width = grid.columns() + 1;
        int[] counts = new int[width * (grid.rows() + 1)];
        for (int row = 0; row < grid.rows(); row++) {
            for (int column = 0; column < grid.columns(); column++) {
                int corner = (row + 1) * width + column + 1;
                int own = active[row * grid.columns() + column] ? 1 : 0;
                counts[corner] = own + counts[corner - 1] + counts[corner - width] - counts[corner - width - 1];
            }
        }
        return counts;
    }

    private double[] sums(double[] field) {
        int width = grid.columns() + 1;
        double[] sums = new double[width * (grid.rows() + 1)];
        for (int row = 0; row < grid.rows(); row++) {
            for (int column = 0; column < grid.columns(); column++) {
                int cell = row * grid.columns() + column;
                double own = active[cell] ? grid.area(cell) * field[cell] : 0;
                int corner = (row + 1) * width + column + 1;
                sums[corner] = own + sums[corner - 1] + sums[corner - width] - sums[corner - width - 1];
            }
        }
        return sums;
    }

    /**
     * The estimate of every active cell after some times.
     *
     * @param times the times (d)
     * @param screenRadius radius of the screen (m)
     * @param team threads; what they find does not depend on their number
     * @return the estimate {@code [time][cell]} (d/m²), NaN outside the aquifer
     */
    double[][] after(double[] times, double screenRadius, WorkerTeam team) {
        double[][] drawdown = new double[times.length][grid.cellCount()];
        team.split(grid.rows(), 1, (first, end) -> {
            Rings rings = new Rings();
            double[] ofCell = new double[times.length];
            for (int cell = first * grid.columns(); cell < end * grid.columns(); cell++) {
                Arrays.fill(ofCell, Double.NaN);
                if (active[cell]) {
                    estimate(cell, times, screenRadius, rings, ofCell);
                }
                for (int i = 0; i < times.length; i++) {
                    drawdown[i][cell] = ofCell[i];
                }
            }
        });
        return drawdown;
    }

    /** Rings are alike for all times; a time ends with the ring that its radius of influence lies in. */
    private void estimate(int cell, double[] times, double screenRadius, Rings rings, double[] found) {
        double inner = 0.5 * Math.sqrt(grid.area(cell));
        double sum = Math.log(inner / screenRadius) / ownT[cell];
        int left = times.length;
        rings.startAround(cell, inner);
        for (int ring = 0; ring < MOST_RINGS && left > 0; ring++) {
            double outer = 2 * inner;
            rings.next(outer);
            double t = Math.exp(rings.mean(logT));
            double s = rings.mean(storativity);
            double byLeakage = rings.mean(leakance) / (DE_GLEE * DE_GLEE * t);
            for (int i = 0; i < times.length; i++) {
                if (Double.isNaN(found[i])) {
                    double byTime = s / (COOPER_JACOB * COOPER_JACOB * t * times[i]);
                    double reach = 1 / Math.sqrt(byTime + byLeakage);
                    if (reach < outer) {
                        found[i] = (sum + Math.max(0, Math.log(reach / inner)) / t) / (2 * Math.PI);
                        left--;
                    }
                }
            }
            sum += Math.log(2) / t;
            inner = outer;
        }
        for (int i = 0; i < times.length; i++) {
            found[i] = Double.isNaN(found[i]) ? sum / (2 * Math.PI) : found[i];
        }
    }

    /** Square rings of whole cells around one cell after the other, each from where the one before ended. Of one thread. */
    private final class Rings {

        private double x;
        private double y;

        /** North-east, north-west, south-east and south-west corner of what is within a ring, by their places in sums. */
        private int[] within = new int[4];

        /** The same of the ring and what is within. */
        private int[] whole = new int[4];

        private double areaWithin;
        private double area;
        private int cellsWithin;
        private int cellsInAll;

        void startAround(int cell, double half) {
            x = grid.centreX(cell);
            y = grid.centreY(cell);
            next(half);
        }

        void next(double half) {
            int[] before = within;
            within = whole;
            whole = before;
            areaWithin = area;
            cellsWithin = cellsInAll;
            int width = grid.columns() + 1;
            int west = corner(grid.x(), x - half);
            int east = corner(grid.x(), x + half);
            int south = corner(grid.y(), y - half) * width;
            int north = corner(grid.y(), y + half) * width;
            whole[0] = north + east;
            whole[1] = north + west;
            whole[2] = south + east;
            whole[3] = south + west;
            area = sum(areas, whole);
            cellsInAll = cells[whole[0]] - cells[whole[1]] - cells[whole[2]] + cells[whole[3]];
        }

        /** Mean by area over the active cells of the ring; of all within it, the cell itself at least, where it has none. */
        double mean(double[] sums) {
            double all = sum(sums, whole);
            return cellsWithin < cellsInAll ? (all - sum(sums, within)) / (area - areaWithin) : all / area;
        }

        private static double sum(double[] sums, int[] corners) {
            return sums[corners[0]] - sums[corners[1]] - sums[corners[2]] + sums[corners[3]];
        }
    }

    /** The edge nearest to a position. */
    private static int corner(Axis axis, double position) {
        if (position <= axis.start()) {
            return 0;
        }
        if (position >= axis.end()) {
            return axis.cells();
        }
        int low = 0;
        int high = axis.cells();
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (axis.edge(middle) <= position) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return position - axis.edge(low) < axis.edge(high) - position ? low : high;
    }
}
