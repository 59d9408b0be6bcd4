package org.headfall.solver.flow;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Fall of head in all cells by a unit discharge of single bores and springs, in one implicit stage. Kept for the stage
 * coefficients used last, in single precision: they serve to correct heads by small changes of discharge.
 */
final class WallResponses {

    private static final long BYTES_KEPT = 96L << 20;

    private final StageMatrix matrix;
    private final PointDischarges points;
    private final double[] right;
    private final double[] response;
    private final Map<Double, float[][]> kept = new LinkedHashMap<>(16, 0.75f, true);
    private long bytes;

    WallResponses(StageMatrix matrix, PointDischarges points) {
        this.matrix = matrix;
        this.points = points;
        right = new double[matrix.size()];
        response = new double[matrix.size()];
    }

    /**
     * Response of all cells to a point, for the coefficient that the matrix is prepared for.
     *
     * @param point the point
     * @return fall of head of each cell per discharge (d/m²); not to be changed
     */
    float[] of(int point) {
        float[][] columns = kept.computeIfAbsent(matrix.coefficient(), key -> new float[points.count()][]);
        if (columns[point] == null) {
            makeRoom(columns);
            columns[point] = compute(point);
            bytes += 4L * right.length;
        }
        return columns[point];
    }

    private float[] compute(int point) {
        Arrays.fill(right, 0);
        points.weights(point).add(1, right);
        Arrays.fill(response, 0);
        matrix.solveUnit(right, response);
        float[] rounded = new float[response.length];
        for (int cell = 0; cell < rounded.length; cell++) {
            rounded[cell] = (float) response[cell];
        }
        return rounded;
    }

    /** Drops what has not been used for longest, but never the columns in use. */
    private void makeRoom(float[][] inUse) {
        var eldest = kept.values().iterator();
        while (bytes > BYTES_KEPT && eldest.hasNext()) {
            float[][] columns = eldest.next();
            if (columns != inUse) {
                bytes -= 4L
                        * right.length
                        * Arrays.stream(columns)
                                .filter(column -> column != null)
                                .count();
                eldest.remove();
            }
        }
    }
}
