package org.headfall.scenarios.interpolation;

import org.headfall.solver.linear.WorkerTeam;

/**
 * The centres of the cells of a rectilinear grid. Arrays are not copied and must not change.
 *
 * @param x x of each column (m), ascending
 * @param y y of each row (m), ascending
 */
@SuppressWarnings("ArrayRecordComponent") // the axes of a grid, shared and never compared
public record CellCentres(double[] x, double[] y) {
    /** From so many cells on threads take less time than they need to start. */
    private static final int WORTH_THREADS = 10_000;

    /**
     * The centres between cell edges.
     *
     * @param edgesX ascending cell edges along x (m), at least two
     * @param edgesY ascending cell edges along y (m), at least two
     */
    public static CellCentres between(double[] edgesX, double[] edgesY) {
        return new CellCentres(middles(edgesX), middles(edgesY));
    }

    private static double[] middles(double[] edges) {
        double[] middles = new double[edges.length - 1];
        for (int i = 0; i < middles.length; i++) {
            middles[i] = 0.5 * (edges[i] + edges[i + 1]);
        }
        return middles;
    }

    /** {@return the number of cells} */
    public int count() {
        return x.length * y.length;
    }

    /** The values of a surface at the centres, row by row from south to north, by at most so many threads. */
    double[] values(Surface surface, int threads) {
        double[] values = new double[count()];
        try (WorkerTeam team = new WorkerTeam(count() < WORTH_THREADS ? 1 : threads)) {
            team.split(y.length, 1, (from, to) -> {
                for (int row = from; row < to; row++) {
                    fillRow(surface, row, values);
                }
            });
        }
        return values;
    }

    private void fillRow(Surface surface, int row, double[] values) {
        for (int column = 0; column < x.length; column++) {
            values[row * x.length + column] = surface.at(x[column], y[row]);
        }
    }
}
