package org.headfall.solver.response;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.function.IntPredicate;
import org.headfall.solver.grid.Axis;
import org.headfall.solver.grid.RectilinearGrid;
import org.junit.jupiter.api.Test;

class FieldCheckTest {

    private static final RectilinearGrid GRID = new RectilinearGrid(Axis.uniform(0, 100, 50), Axis.uniform(0, 100, 40));

    private static int[] cells(IntPredicate active) {
        int[] cells = FieldCheck.cells(GRID, active);
        assertTrue(Arrays.stream(cells).allMatch(active), "cells outside the aquifer");
        assertEquals(cells.length, Arrays.stream(cells).distinct().count(), "cells chosen twice");
        return cells;
    }

    @Test
    void wholeGridIsLookedAtInItsCornersToo() {
        int[] cells = cells(cell -> true);
        assertEquals(144, cells.length);
        for (int corner : new int[] {0, 49, 39 * 50, 40 * 50 - 1}) {
            assertTrue(Arrays.binarySearch(cells, corner) >= 0, "corner " + corner);
        }
    }

    /** One column between those of the lattice, of which it has no cell: every cell of the strip is looked at. */
    @Test
    void stripThatMissesTheLatticeIsLookedAtEverywhere() {
        assertEquals(40, cells(cell -> GRID.column(cell) == 2).length);
    }

    /** A slanting strip of three cells' width, 120 in all less its ends: the lattice alone has at most a tenth of them. */
    @Test
    void slantingStripIsLookedAtAlongItsLength() {
        int[] cells = cells(cell -> Math.abs(GRID.column(cell) - GRID.row(cell) - 5) <= 1);
        for (int row = 0; row < 40; row++) {
            int wanted = row;
            assertTrue(Arrays.stream(cells).anyMatch(cell -> GRID.row(cell) == wanted), "row " + row);
        }
    }

    /** Of half a grid too, where the lattice alone has half of them. */
    @Test
    void aquiferThatFillsHalfTheGridIsLookedAtInAsManyCells() {
        assertEquals(144, cells(cell -> GRID.column(cell) < 25).length);
    }

    /** Of one solution against none that is its largest value in these cells; of the same sums it is none. */
    @Test
    void differenceIsTheLargestInAnyOfTheCells() {
        SolvedField field = SolvedField.of(SolvedField.field(true), 0, 1, 0.01);
        FieldCheck check = new FieldCheck(field.fields());
        int[] cells = FieldCheck.cells(field.problem().aquifer().grid(), cell -> true);
        double[][] none = new double[3][4];
        double[][] one = new double[3][4];
        one[1][2] = -800;
        double[] solution = field.solution(1, 2);
        double largest = Arrays.stream(cells)
                .mapToDouble(cell -> 800 * solution[cell])
                .max()
                .orElseThrow();
        assertTrue(largest > 0);
        assertEquals(largest, check.difference(one, none), 1e-12 * largest);
        assertEquals(largest, check.difference(none, one), 1e-12 * largest);
        assertEquals(0, check.difference(one, one));
        double[][] fallen = new double[3][4];
        fallen[0][3] = 0.25;
        assertEquals(0.25, check.difference(fallen, none), 1e-12, "an even fall");
    }
}
