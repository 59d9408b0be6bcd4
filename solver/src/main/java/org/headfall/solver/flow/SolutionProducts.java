package org.headfall.solver.flow;

import org.headfall.solver.linear.WorkerTeam;

/**
 * Products {@code h_i^T W h_j} of solutions, each zero outside of a rectangle. They are added up row by row of the grid, so that
 * the solutions of a row stay in the cache, and block by block of rows in order, so that they are the same bit for bit for any
 * number of threads.
 */
final class SolutionProducts {

    /** Cells of which the products are added up by one thread, roughly. */
    private static final int BLOCK = 8192;

    private final double[][] solutions;
    private final CellWindow[] windows;
    private final double[] weight;
    private final int causes;
    private final int gridColumns;
    private final int gridRows;

    /**
     * Products to be formed.
     *
     * @param solutions value of each cell of the grid, for every source
     * @param windows rectangle outside of which each solution is zero
     * @param weight W of each cell
     * @param causes number of sources, from the first, whose products with all others are wanted
     */
    SolutionProducts(double[][] solutions, CellWindow[] windows, double[] weight, int causes) {
        this.solutions = solutions;
        this.windows = windows;
        this.weight = weight;
        this.causes = causes;
        gridColumns = windows[0].gridColumns();
        gridRows = windows[0].gridRows();
    }

    /** Adds the products to the values of the pairs at a shift. */
    void addTo(PairValues pairs, int shift, WorkerTeam team) {
        int rowsOfBlock = Math.max(1, BLOCK / gridColumns);
        double[][][] sums = new double[(gridRows + rowsOfBlock - 1) / rowsOfBlock][][];
        team.split(sums.length, 1, (first, end) -> {
            for (int block = first; block < end; block++) {
                sums[block] = products(block * rowsOfBlock, Math.min(gridRows, (block + 1) * rowsOfBlock));
            }
        });
        for (double[][] ofBlock : sums) {
            for (int i = 0; i < solutions.length; i++) {
                int others = Math.min(i, causes);
                for (int j = 0; j < others; j++) {
                    pairs.of(i, j)[shift] += ofBlock[i][j];
                }
                pairs.of(i, i)[shift] += ofBlock[i][others];
            }
        }
    }

    /** Products over some rows: of each source with the causes before it, then with itself. */
    private double[][] products(int firstRow, int endRow) {
        double[][] sums = new double[solutions.length][];
        for (int i = 0; i < sums.length; i++) {
            sums[i] = new double[Math.min(i, causes) + 1];
        }
        double[] weighted = new double[gridColumns];
        double[][] others = new double[causes + 1][];
        int[] places = new int[causes + 1];
        for (int row = firstRow; row < endRow; row++) {
            for (int i = 0; i < sums.length; i++) {
                CellWindow window = windows[i];
                if (row >= window.firstRow() && row < window.endRow()) {
                    int count = othersInRow(i, row, others, places);
                    addRow(i, row, weighted, others, places, count, sums[i]);
                }
            }
        }
        return sums;
    }

    /** Finds the solutions that a row of one meets, itself the last. */
    private int othersInRow(int i, int row, double[][] others, int[] places) {
        int count = 0;
        for (int j = 0; j < Math.min(i, causes); j++) {
            CellWindow common = windows[j].and(windows[i]);
            if (row >= common.firstRow() && row < common.endRow() && common.columns() > 0) {
                others[count] = solutions[j];
                places[count++] = j;
            }
        }
        others[count] = solutions[i];
        places[count] = Math.min(i, causes);
        return count + 1;
    }

    private void addRow(int i, int row, double[] weighted, double[][] others, int[] places, int count, double[] sums) {
        int from = row * gridColumns + windows[i].firstColumn();
        int length = windows[i].columns();
        double[] own = solutions[i];
        for (int k = 0; k < length; k++) {
            weighted[k] = weight[from + k] * own[from + k];
        }
        int j = 0;
        for (; j < count - 3; j += 4) {
            addFour(weighted, others, j, from, length, places, sums);
        }
        for (; j < count; j++) {
            sums[places[j]] += product(weighted, others[j], from, length);
        }
    }

    /** Four products at once, so that what is weighted is read once; each in two sums that do not wait for each other. */
    private static void addFour(
            double[] weighted, double[][] others, int j, int from, int length, int[] places, double[] sums) {
        double[] a = others[j];
        double[] b = others[j + 1];
        double[] c = others[j + 2];
        double[] d = others[j + 3];
        double evenA = 0;
        double evenB = 0;
        double evenC = 0;
        double evenD = 0;
        double oddA = 0;
        double oddB = 0;
        double oddC = 0;
        double oddD = 0;
        int k = 0;
        for (; k < length - 1; k += 2) {
            double even = weighted[k];
            double odd = weighted[k + 1];
            evenA += even * a[from + k];
            oddA += odd * a[from + k + 1];
            evenB += even * b[from + k];
            oddB += odd * b[from + k + 1];
            evenC += even * c[from + k];
            oddC += odd * c[from + k + 1];
            evenD += even * d[from + k];
            oddD += odd * d[from + k + 1];
        }
        if (k < length) {
            evenA += weighted[k] * a[from + k];
            evenB += weighted[k] * b[from + k];
            evenC += weighted[k] * c[from + k];
            evenD += weighted[k] * d[from + k];
        }
        sums[places[j]] += evenA + oddA;
        sums[places[j + 1]] += evenB + oddB;
        sums[places[j + 2]] += evenC + oddC;
        sums[places[j + 3]] += evenD + oddD;
    }

    private static double product(double[] weighted, double[] values, int from, int length) {
        double even = 0;
        double odd = 0;
        int k = 0;
        for (; k < length - 1; k += 2) {
            even += weighted[k] * values[from + k];
            odd += weighted[k + 1] * values[from + k + 1];
        }
        if (k < length) {
            even += weighted[k] * values[from + k];
        }
        return even + odd;
    }
}
