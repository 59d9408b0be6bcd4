package org.headfall.scenarios.randomfield;

import java.util.Arrays;
import java.util.Map;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/**
 * Values that fields have to keep: what a field misses in their cells is added, spread by its covariance C as {@code sum
 * b_i C(x - x_i)} with {@code K b = missed}, K being the covariances between the cells (dual form of simple kriging).
 */
final class KeptValues {

    /** How far a known value may be missed, in standard deviations. */
    private static final double LARGEST_MISS = 1e-7;

    private static final String TOO_CLOSE =
            "known values so close together that a field this smooth cannot keep them all";

    private final Lattice lattice;
    private final double deviation;
    private final int[] cells;
    private final double[] wanted;
    private final DMatrixRMaj inverse;
    private final double[] table;

    /**
     * Values to keep.
     *
     * @param wanted value less the mean of all, by number of the cell
     * @param lattice the cells
     * @param covariance of the fields
     * @throws IllegalArgumentException if no field of that covariance can have them all
     */
    KeptValues(Map<Integer, Double> wanted, Lattice lattice, Covariance covariance) {
        this.lattice = lattice;
        deviation = Math.sqrt(covariance.variance());
        cells = wanted.keySet().stream().mapToInt(Integer::intValue).toArray();
        this.wanted = wanted.values().stream().mapToDouble(Double::doubleValue).toArray();
        table = table(lattice, covariance);
        inverse = inverse();
    }

    /** Covariances by distance: from {@code 1 - columns} to {@code columns - 1} east, from none to {@code rows - 1} north. */
    private static double[] table(Lattice lattice, Covariance covariance) {
        int width = 2 * lattice.columns() - 1;
        double[] table = new double[width * lattice.rows()];
        for (int north = 0; north < lattice.rows(); north++) {
            for (int east = 1 - lattice.columns(); east < lattice.columns(); east++) {
                table[north * width + east + lattice.columns() - 1] =
                        covariance.at(east * lattice.width(), north * lattice.height());
            }
        }
        return table;
    }

    private DMatrixRMaj inverse() {
        int columns = lattice.columns();
        DMatrixRMaj matrix = new DMatrixRMaj(cells.length, cells.length);
        for (int i = 0; i < cells.length; i++) {
            for (int j = 0; j < cells.length; j++) {
                int east = cells[i] % columns - cells[j] % columns;
                int north = cells[i] / columns - cells[j] / columns;
                int way = north < 0 ? -1 : 1;
                matrix.set(i, j, table[Math.abs(north) * (2 * columns - 1) + way * east + columns - 1]);
            }
        }
        LinearSolverDense<DMatrixRMaj> solver = LinearSolverFactory_DDRM.symmPosDef(cells.length);
        if (!solver.setA(matrix)) {
            throw new IllegalArgumentException(TOO_CLOSE);
        }
        DMatrixRMaj found = new DMatrixRMaj(cells.length, cells.length);
        solver.invert(found);
        return found;
    }

    /** Changes a field so that it has the values. */
    void impose(double[] field) {
        double[] missed = new double[cells.length];
        Arrays.setAll(missed, i -> wanted[i] - field[cells[i]]);
        for (int i = 0; i < cells.length; i++) {
            double weight = 0;
            for (int j = 0; j < cells.length; j++) {
                weight += inverse.get(i, j) * missed[j];
            }
            add(weight, cells[i], field);
        }
        for (int i = 0; i < cells.length; i++) {
            // A system too near to singular has a solution that means nothing.
            if (!(Math.abs(field[cells[i]] - wanted[i]) < LARGEST_MISS * deviation)) {
                throw new IllegalArgumentException(TOO_CLOSE);
            }
        }
    }

    private void add(double weight, int from, double[] field) {
        int columns = lattice.columns();
        int width = 2 * columns - 1;
        int fromColumn = from % columns;
        int fromRow = from / columns;
        for (int row = 0; row < lattice.rows(); row++) {
            int north = row - fromRow;
            // Covariance is the same both ways, so that rows to the south are those to the north read backwards.
            int way = north < 0 ? -1 : 1;
            int start = Math.abs(north) * width + columns - 1 - way * fromColumn;
            for (int column = 0; column < columns; column++) {
                field[row * columns + column] += weight * table[start + way * column];
            }
        }
    }
}
