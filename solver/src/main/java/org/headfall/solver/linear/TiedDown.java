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
        Arrays.fill(group, -1);
        int[] stack = new int[matrix.cells()];
        int[] first = new int[16];
        int[] count = new int[16];
        int groups = 0;
        for (int k = 0; k < group.length; k++) {
            if (group[k] < 0) {
                if (groups == first.length) {
                    first = Arrays.copyOf(first, 2 * groups);
                    count = Arrays.copyOf(count, 2 * groups);
                }
                first[groups] = k;
                count[groups] = flood(k, groups, stack);
                groups++;
            }
        }
        this.firstCell = Arrays.copyOf(first, groups);
        this.size = Arrays.copyOf(count, groups);
    }

    private int flood(int start, int label, int[] stack) {
        int columns = matrix.columns();
        double[] east = matrix.east();
        double[] north = matrix.north();
        int count = 0;
        int top = 0;
        group[start] = label;
        stack[top++] = start;
        while (top > 0) {
            int k = stack[--top];
            count++;
            top = east[k] > 0 ? push(k + 1, label, stack, top) : top;
            top = north[k] > 0 ? push(k + columns, label, stack, top) : top;
            top = k % columns > 0 && east[k - 1] > 0 ? push(k - 1, label, stack, top) : top;
            top = k >= columns && north[k - columns] > 0 ? push(k - columns, label, stack, top) : top;
        }
        return count;
    }

    private int push(int cell, int label, int[] stack, int top) {
        if (group[cell] >= 0) {
            return top;
        }
        group[cell] = label;
        stack[top] = cell;
        return top + 1;
    }

    /**
     * Refuses a matrix whose present diagonal leaves a group loose.
     *
     * @throws SingularSystemException naming a cell of the group
     */
    void require() {
        boolean[] tied = new boolean[firstCell.length];
        int loose = tied.length;
        double[] diagonal = matrix.diagonal();
        for (int k = 0; k < group.length && loose > 0; k++) {
            if (!tied[group[k]] && diagonal[k] - matrix.couplingSum(k) > ROUNDING * diagonal[k]) {
                tied[group[k]] = true;
                loose--;
            }
        }
        for (int g = 0; g < tied.length; g++) {
            if (!tied[g]) {
                throw new SingularSystemException(matrix, firstCell[g], size[g]);
            }
        }
    }
}
