package org.headfall.solver.response;

import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;

/**
 * A first estimate of the drawdown at the wall of a bore in any cell by its own unit discharge, from what is around it:
 * {@code s = 1/(2 pi) sum ln(r_k+1 / r_k) / T_k} over square rings that double in width, with the geometric mean of T in
 * each ring (the effective T of a plane with random T, Matheron 1967), out to the radius of influence {@code 1.5 sqrt(T t /
 * S)} (Cooper and Jacob 1946) or {@code 1.123 sqrt(T/leakance)} (de Glee 1930 in the form for small distances), whichever
 * is shorter, their inverse squares added. Sides of the aquifer and storage of the sealing bed are not in it.
 */
final class LocalDrawdown {

    private static final double COOPER_JACOB = 1.5;
    private static final double DE_GLEE = 1.123;
    private static final int MOST_RINGS = 40;

    private final RectilinearGrid grid;
    private final AreaSums logT;
    private final AreaSums logStorativity;
    private final AreaSums leakance;
    private final double[] ownT;
    private final boolean[] active;

    LocalDrawdown(FlowProblem problem) {
        Aquifer aquifer = problem.aquifer();
        grid = aquifer.grid();
        active = aquifer.active();
        ownT = new double[grid.cellCount()];
        double[] logs = new double[grid.cellCount()];
        double[] logS = new double[grid.cellCount()];
        double[] leak = new double[grid.cellCount()];
        for (int cell = 0; cell < ownT.length; cell++) {
            if (active[cell]) {
                ownT[cell] = aquifer.effectiveTransmissivity(cell);
                logs[cell] = Math.log(ownT[cell]);
                logS[cell] = Math.log(aquifer.storativity()[cell]);
                int c = cell;
                leak[cell] = problem.sealingBed().map(bed -> bed.leakance(c)).orElse(0.0);
            }
        }
        logT = new AreaSums(grid, active, logs);
        logStorativity = new AreaSums(grid, active, logS);
        leakance = new AreaSums(grid, active, leak);
    }

    /** The estimate of every active cell (d/m²), NaN elsewhere. */
    double[] after(double time, double screenRadius) {
        double[] drawdown = new double[grid.cellCount()];
        for (int cell = 0; cell < drawdown.length; cell++) {
            drawdown[cell] = active[cell] ? at(cell, time, screenRadius) : Double.NaN;
        }
        return drawdown;
    }

    private double at(int cell, double time, double screenRadius) {
        double x = grid.centreX(cell);
        double y = grid.centreY(cell);
        double inner = 0.5 * Math.sqrt(grid.area(cell));
        double sum = Math.log(inner / screenRadius) / ownT[cell];
        for (int ring = 0; ring < MOST_RINGS; ring++) {
            double outer = 2 * inner;
            AreaSums.Ring cells = new AreaSums.Ring(x, y, inner, outer);
            double t = Math.exp(logT.mean(cells));
            if (Double.isNaN(t)) {
                break;
            }
            double byTime = Math.exp(logStorativity.mean(cells)) / (COOPER_JACOB * COOPER_JACOB * t * time);
            double byLeakage = leakance.mean(cells) / (DE_GLEE * DE_GLEE * t);
            double reach = 1 / Math.sqrt(byTime + byLeakage);
            if (reach < outer) {
                sum += Math.max(0, Math.log(reach / inner)) / t;
                break;
            }
            sum += Math.log(2) / t;
            inner = outer;
        }
        return sum / (2 * Math.PI);
    }

    /** Sums over rectangles of whole cells, from sums over all cells south-west of each corner. */
    private static final class AreaSums {

        private final RectilinearGrid grid;
        private final double[] values;
        private final double[] areas;

        /** A square ring around a place. */
        private record Ring(double x, double y, double inner, double outer) {}

        AreaSums(RectilinearGrid grid, boolean[] active, double[] field) {
            this.grid = grid;
            int width = grid.columns() + 1;
            values = new double[width * (grid.rows() + 1)];
            areas = new double[values.length];
            for (int row = 0; row < grid.rows(); row++) {
                for (int column = 0; column < grid.columns(); column++) {
                    int cell = row * grid.columns() + column;
                    double area = active[cell] ? grid.area(cell) : 0;
                    int corner = (row + 1) * width + column + 1;
                    areas[corner] = area + areas[corner - 1] + areas[corner - width] - areas[corner - width - 1];
                    values[corner] = area * field[cell]
                            + values[corner - 1]
                            + values[corner - width]
                            - values[corner - width - 1];
                }
            }
        }

        /** Mean by area over the cells of a ring; of all within it where the ring has none; NaN outside the grid. */
        double mean(Ring ring) {
            double area = within(areas, ring, ring.outer());
            double sum = within(values, ring, ring.outer());
            double innerArea = within(areas, ring, ring.inner());
            if (innerArea < area) {
                area -= innerArea;
                sum -= within(values, ring, ring.inner());
            }
            return sum / area;
        }

        private double within(double[] sums, Ring ring, double half) {
            int west = corner(grid.x(), ring.x() - half);
            int east = corner(grid.x(), ring.x() + half);
            int south = corner(grid.y(), ring.y() - half);
            int north = corner(grid.y(), ring.y() + half);
            int width = grid.columns() + 1;
            return sums[north * width + east]
                    - sums[north * width + west]
                    - sums[south * width + east]
                    + sums[south * width + west];
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
}
