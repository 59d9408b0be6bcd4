package org.headfall.solver.response;

import java.util.Arrays;
import java.util.function.IntUnaryOperator;
import org.headfall.solver.grid.RectilinearGrid;

/**
 * Some cells spread evenly over many: halves of halves, cut across their longer extent, and the middle cell of each part.
 * Cells are put in order by counting those of each row or column, so each level of halves costs time in proportion to the
 * cells, and two integers a cell are held in all.
 */
final class SpreadCells {

    private final RectilinearGrid grid;

    SpreadCells(RectilinearGrid grid) {
        this.grid = grid;
    }

    /**
     * Chooses cells.
     *
     * @param among the cells to choose from, at least one; not changed
     * @param count how many, at most
     */
    int[] choose(int[] among, int count) {
        int[] chosen = new int[Math.min(count, among.length)];
        new Halves(among.clone(), new int[among.length], chosen).split(0, among.length, 0, chosen.length);
        return chosen;
    }

    /** Cells under division: each part is a stretch of them. */
    private final class Halves {

        private final int[] cells;
        private final int[] ordered;
        private final int[] chosen;

        Halves(int[] cells, int[] ordered, int[] chosen) {
            this.cells = cells;
            this.ordered = ordered;
            this.chosen = chosen;
        }

        /**
         * Chooses cells from a stretch.
         *
         * @param from first of the stretch
         * @param to end of the stretch
         * @param first place of the first chosen cell
         * @param count how many to choose
         */
        void split(int from, int to, int first, int count) {
            if (count == 1) {
                chosen[first] = middle(from, to);
                return;
            }
            order(from, to);
            int fewer = count / 2;
            int at = from + (int) ((long) (to - from) * fewer / count);
            split(from, at, first, fewer);
            split(at, to, first + fewer, count - fewer);
        }

        /** Puts a stretch in order along its longer extent; cells that stand alike stay in their order. */
        private void order(int from, int to) {
            int west = grid.columns();
            int east = 0;
            int south = grid.rows();
            int north = 0;
            for (int i = from; i < to; i++) {
                west = Math.min(west, grid.column(cells[i]));
                east = Math.max(east, grid.column(cells[i]));
                south = Math.min(south, grid.row(cells[i]));
                north = Math.max(north, grid.row(cells[i]));
            }
            double alongX = grid.x().centre(east) - grid.x().centre(west);
            double alongY = grid.y().centre(north) - grid.y().centre(south);
            if (alongX >= alongY) {
                order(from, to, grid::column, west, east);
            } else {
                order(from, to, grid::row, south, north);
            }
        }

        private void order(int from, int to, IntUnaryOperator line, int lowest, int highest) {
            int[] next = new int[highest - lowest + 2];
            for (int i = from; i < to; i++) {
                next[line.applyAsInt(cells[i]) - lowest + 1]++;
            }
            for (int i = 1; i < next.length; i++) {
                next[i] += next[i - 1];
            }
            for (int i = from; i < to; i++) {
                ordered[from + next[line.applyAsInt(cells[i]) - lowest]++] = cells[i];
            }
            System.arraycopy(ordered, from, cells, from, to - from);
        }

        private int middle(int from, int to) {
            double x = Arrays.stream(cells, from, to)
                    .mapToDouble(grid::centreX)
                    .average()
                    .orElseThrow();
            double y = Arrays.stream(cells, from, to)
                    .mapToDouble(grid::centreY)
                    .average()
                    .orElseThrow();
            int best = cells[from];
            double least = Double.POSITIVE_INFINITY;
            for (int i = from; i < to; i++) {
                double distance = Math.hypot(grid.centreX(cells[i]) - x, grid.centreY(cells[i]) - y);
                if (distance < least) {
                    least = distance;
                    best = cells[i];
                }
            }
            return best;
        }
    }
}
