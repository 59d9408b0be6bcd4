package org.headfall.scenarios.randomfield;

import org.apache.commons.math3.transform.DftNormalization;
import org.apache.commons.math3.transform.FastFourierTransformer;
import org.apache.commons.math3.transform.TransformType;

/** The discrete Fourier transform over a plane of complex numbers: along its rows, then along its columns. */
final class PlaneTransform {

    /** Columns that are copied out and in together, so that each line of memory is fetched once for several. */
    private static final int TOGETHER = 16;

    private PlaneTransform() {}

    /**
     * Transforms in place, without a factor.
     *
     * @param columns length of a row, a power of two
     * @param real real parts, row by row; a power of two of rows
     * @param imaginary imaginary parts
     */
    static void forward(int columns, double[] real, double[] imaginary) {
        int rows = real.length / columns;
        double[][] line = new double[2][columns];
        for (int row = 0; row < rows; row++) {
            System.arraycopy(real, row * columns, line[0], 0, columns);
            System.arraycopy(imaginary, row * columns, line[1], 0, columns);
            transform(line);
            System.arraycopy(line[0], 0, real, row * columns, columns);
            System.arraycopy(line[1], 0, imaginary, row * columns, columns);
        }
        int together = Math.min(TOGETHER, columns);
        double[][][] lines = new double[together][2][rows];
        for (int first = 0; first < columns; first += together) {
            for (int row = 0; row < rows; row++) {
                for (int k = 0; k < together; k++) {
                    lines[k][0][row] = real[row * columns + first + k];
                    lines[k][1][row] = imaginary[row * columns + first + k];
                }
            }
            for (double[][] column : lines) {
                transform(column);
            }
            for (int row = 0; row < rows; row++) {
                for (int k = 0; k < together; k++) {
                    real[row * columns + first + k] = lines[k][0][row];
                    imaginary[row * columns + first + k] = lines[k][1][row];
                }
            }
        }
    }

    private static void transform(double[][] line) {
        FastFourierTransformer.transformInPlace(line, DftNormalization.STANDARD, TransformType.FORWARD);
    }
}
