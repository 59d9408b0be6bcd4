package org.headfall.solver.response;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.headfall.solver.flow.SourceFields;

/** Cells spread over the map, its rim and corners included, at which heads by better and by poorer models are compared. */
final class FieldCheck {

    /** Rows and columns of cells looked at: fields of models differ over distances, not from cell to cell. */
    private static final int ALONG_SIDE = 12;

    private final double[][][] solutions;

    /**
     * Reads all solutions in these cells.
     *
     * @param fields the solutions
     * @param rows rows of the grid
     * @param columns columns of the grid
     */
    FieldCheck(SourceFields fields, int rows, int columns) {
        int[] inRow = spread(columns);
        solutions = Arrays.stream(spread(rows))
                .flatMap(row -> Arrays.stream(inRow).map(column -> row * columns + column))
                .mapToObj(fields::solutionsIn)
                .toArray(double[][][]::new);
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
