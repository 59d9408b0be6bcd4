package org.headfall.solver.linear;

import java.util.Arrays;

/**
 * Check that every connected group of cells is tied down, that is, has a diagonal above the sum of its couplings
 * somewhere; without it the matrix is singular.
 */
final class TiedDown {
    /** Rounding of a sum of five terms, with room for another order of summation, as a part of the diagonal. */
    private static final double ROUNDING = 16 * 0x1.0p-53;

    private final FivePointMatrix matrix;
    private final int[] group;
    private final int[] firstCell;
    private final int[] size;

    /** Finds the connected groups of a matrix; they depend on its couplings only. */
    TiedDown(FivePointMatrix matrix) {
        this.matrix = matrix;
        this.group = new int[matrix.cells()];
        joinCoupledCells();
        int[] first = new int[16];
        int[] count = new int[16];
        int groups = 0;
        for (int k = 0; k < group.length; k++) {
            // Cells before k hold their group's number by now, k itself still the cell it was joined to.
            boolean begins = group[k] == k;
            if (begins && groups == first.length) {
                first = Arrays.copyOf(first, 2 * groups);
                count = Arrays.copyOf(count, 2 * groups);
            }
            if (begins) {
                first[groups] = k;
                group[k] = groups++;
            } else {
                group[k] = group[group[k]];
            }
            count[group[k]]++;
        }
        this.firstCell = Arrays.copyOf(first, groups);
        this.size = Arrays.copyOf(count, groups);
    }

    /** Makes each cell name an earlier cell of its group, the first one itself (Tarjan 1975, with path halving). */
    private void joinCoupledCells() {
        int columns = matrix.columns();
        double[] east = matrix.east();
        double[] north = matrix.north();
        int k = 0;
        for (int row = 0; row < matrix.rows(); row++) {
            for (int column = 0; column < columns; column++, k++) {
                group[k] = column > 0 && east[k - 1] > 0 ? group[k - 1] : k;
                if (row > 0 && north[k - columns] > 0 && group[k - columns] != group[k]) {
                    join(k, k - columns);
                }
            }
        }
    }

    private void join(int cell, int other) {
        int a = firstOf(cell);
        int b = firstOf(other);
        group[Math.max(a, b)] = Math.min(a, b);
        group[cell] = Math.min(a, b);
    }

    private int firstOf(int cell) {
        int k = cell;
        while (group[k] != k) {
            group[k] = group[group[k]];
            k = group[k];
        }
        return k;
    }

    /**
     * Refuses a matrix whose present diagonal leaves a group loose.
     *
     * @throws SingularSystemException naming a cell of the group
     */
    void require() {
        int loose = firstLoose();
        if (loose >= 0) {
            throw new SingularSystemException(matrix, firstCell[loose], size[loose]);
        }
    }

    /** Whether the present diagonal ties down every group. */
    boolean holds() {
        return firstLoose() < 0;
    }

    /** The first group that the present diagonal leaves loose; -1 if there is none. */
    private int firstLoose() {
        boolean[] tied = new boolean[firstCell.length];
        int loose = tied.length;
        double[] diagonal = matrix.diagonal();
        for (int k = 0; k < group.length && loose > 0; k++) {
            if (!tied[group[k]] && diagonal[k] - matrix.couplingSum(k) > ROUNDING * diagonal[k]) {
                tied[group[k]] = true;
                loose--;
            }
        }
        int first = 0;
        while (first < tied.length && tied[first]) {
            first++;
        }
        return first < tied.length ? first : -1;
    }
}
