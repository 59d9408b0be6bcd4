package org.headfall.solver.response;

import java.util.Arrays;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.headfall.solver.flow.SourceFields;
import org.headfall.solver.grid.RectilinearGrid;

/**
 * Cells spread over the aquifer at which heads by better and by poorer models are compared: those of a lattice over the grid,
 * its rim and corners included, that belong to the aquifer, and in place of the others more of the aquifer's. However large the
 * grid, that is 144 numbers a solution: 1.4 MB for 40 sources at 30 shifts.
 */
final class FieldCheck {

    /** Rows and columns of cells looked at: fields of models differ over distances, not from cell to cell. */
    private static final int ALONG_SIDE = 12;

    private final double[][][] solutions;

    /**
     * Reads all solutions in these cells.
     *
     * @param fields the solutions
     */
    FieldCheck(SourceFields fields) {
        double[] even = fields.evenField();
        solutions = Arrays.stream(cells(fields.grid(), cell -> even[cell] != 0))
                .mapToObj(fields::solutionsIn)
                .toArray(double[][][]::new);
    }

    /**
     * Chooses cells. Outside the aquifer all solutions are zero, and so is what models differ by: such cells would tell nothing,
     * and a narrow or slanting aquifer may miss the lattice altogether.
     *
     * @param grid the grid
     * @param active whether a cell belongs to the aquifer
     * @return different cells of the aquifer, 144 or all it has
     */
    static int[] cells(RectilinearGrid grid, IntPredicate active) {
        int columns = grid.columns();
        int[] inRow = spread(columns);
        int[] lattice = Arrays.stream(spread(grid.rows()))
                .flatMap(row -> Arrays.stream(inRow).map(column -> row * columns + column))
                .filter(active)
                .toArray();
        int[] others = IntStream.range(0, grid.cellCount())
                .filter(active)
                .filter(cell -> Arrays.binarySearch(lattice, cell) < 0)
                .toArray();
        int wanted = ALONG_SIDE * ALONG_SIDE - lattice.length;
        if (wanted == 0 || others.length == 0) {
            return lattice;
        }
        return IntStream.concat(Arrays.stream(lattice), Arrays.stream(new SpreadCells(grid).choose(others, wanted)))
                .toArray();
    }

    private static int[] spread(int count) {
        return IntStream.range(0, ALONG_SIDE)
                .map(i -> Math.round((count - 1) * (float) i / (ALONG_SIDE - 1)))
                .distinct()
                .toArray();
    }

    /**
     * Largest difference of two sums of the solutions in any of the cells (m).
     *
     * @param one weights {@code [source][shift]}, and of an even fall after those of the shifts
     * @param other other weights
     */
    double difference(double[][] one, double[][] other) {
        double largest = 0;
        for (double[][] ofCell : solutions) {
            double sum = 0;
            for (int source = 0; source < ofCell.length; source++) {
                for (int k = 0; k < ofCell[source].length; k++) {
                    sum += (one[source][k] - other[source][k]) * ofCell[source][k];
                }
            }
            largest = Math.max(largest, Math.abs(sum));
        }
        return largest;
    }
}
