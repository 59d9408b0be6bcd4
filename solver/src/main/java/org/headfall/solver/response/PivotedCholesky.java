package org.headfall.solver.response;

import java.util.Arrays;
import org.ejml.data.DMatrixRMaj;

/**
 * Cholesky factorisation with pivots (Higham 1990, in Cox and Hammarling, Reliable Numerical Computation, 161-185) of the
 * products of some vectors: the vector that those chosen foretell worst comes next, until they foretell all the others. So the
 * chosen are a well-conditioned basis, and so are the first few of them.
 */
final class PivotedCholesky {

    private final int[] chosen;
    private final double[] unforetold;

    /** Columns of the factor, a row for each of all vectors. */
    private final double[][] columns;

    /**
     * Factorises.
     *
     * @param products products of the vectors with each other, symmetric
     * @param smallest square of the part that is not foretold from which on a vector is chosen
     */
    PivotedCholesky(DMatrixRMaj products, double smallest) {
        int all = products.numRows;
        int[] order = new int[all];
        double[] squares = new double[all];
        double[][] factor = new double[all][];
        double[] left = new double[all];
        Arrays.setAll(left, i -> products.get(i, i));
        int count = 0;
        int pivot = largest(left);
        while (count < all && left[pivot] > smallest) {
            order[count] = pivot;
            squares[count] = left[pivot];
            factor[count] = column(products, pivot, Math.sqrt(left[pivot]), factor, count);
            for (int i = 0; i < all; i++) {
                left[i] -= factor[count][i] * factor[count][i];
            }
            left[pivot] = Double.NEGATIVE_INFINITY;
            count++;
            pivot = largest(left);
        }
        chosen = Arrays.copyOf(order, count);
        unforetold = Arrays.copyOf(squares, count);
        columns = Arrays.copyOf(factor, count);
    }

    private static int largest(double[] values) {
        int largest = 0;
        for (int i = 1; i < values.length; i++) {
            largest = values[i] > values[largest] ? i : largest;
        }
        return largest;
    }

    private static double[] column(DMatrixRMaj products, int pivot, double root, double[][] before, int count) {
        double[] column = Arrays.copyOfRange(
                products.data, pivot * products.numCols, pivot * products.numCols + products.numCols);
        for (int k = 0; k < count; k++) {
            double[] earlier = before[k];
            double share = earlier[pivot];
            for (int i = 0; i < column.length; i++) {
                column[i] -= share * earlier[i];
            }
        }
        for (int i = 0; i < column.length; i++) {
            column[i] /= root;
        }
        column[pivot] = root;
        return column;
    }

    /** The chosen vectors, in the order in which they were; not to be changed. */
    int[] chosen() {
        return chosen;
    }

    /** How many of the chosen have a part that those before do not foretell of a square above some value. */
    int countAbove(double square) {
        return (int) Arrays.stream(unforetold).filter(left -> left > square).count();
    }

    /**
     * What each vector of an orthonormal basis holds of the chosen: the inverse of the factor. A basis of the first few of them is
     * its leading part.
     */
    DMatrixRMaj orthonormal() {
        int size = chosen.length;
        DMatrixRMaj inverse = new DMatrixRMaj(size, size);
        double[] row = new double[size];
        for (int i = 0; i < size; i++) {
            Arrays.fill(row, 0);
            for (int k = 0; k < i; k++) {
                double part = columns[k][chosen[i]];
                for (int j = 0; j <= k; j++) {
                    row[j] -= part * inverse.data[k * size + j];
                }
            }
            double diagonal = columns[i][chosen[i]];
            for (int j = 0; j < i; j++) {
                inverse.data[i * size + j] = row[j] / diagonal;
            }
            inverse.data[i * size + i] = 1 / diagonal;
        }
        return inverse;
    }
}
