package org.headfall.scenarios.randomfield;

import org.apache.commons.math3.random.RandomGenerator;
import org.headfall.solver.wording.PlainNumber;

/**
 * Draws normal fields with a given covariance on an even lattice, exact but for what is said below, by embedding the
 * matrix of covariances into a circulant one, which the Fourier transform makes diagonal (C.R. Dietrich and G.N. Newsam
 * 1997, Fast and exact simulation of stationary Gaussian processes through circulant embedding of the covariance matrix,
 * SIAM Journal on Scientific Computing 18, 1088-1107; A.T.A. Wood and G. Chan 1994, Simulation of stationary Gaussian
 * processes in [0, 1]^d, Journal of Computational and Graphical Statistics 3, 409-432).
 *
 * <p>The lattice is taken as a part of a torus at least twice as long each way, on which the covariance depends on the
 * shortest way round. Where that is no covariance, because the range is long, some eigenvalues are below zero. While they
 * matter, the torus is lengthened. Then they count as zero and the others are reduced to keep the variance (Wood and Chan
 * 1994, section 4), which changes covariances by at most twice the share that is cut: up to {@value #NEGLIGIBLE_CUT} of the
 * variogram between opposite corners of the lattice, or {@value #LARGEST_CUT} where a longer torus takes too much memory.
 */
final class CirculantEmbedding {

    /** Share that is cut rather than look farther: no number of samples would show it. */
    private static final double NEGLIGIBLE_CUT = 1e-5;

    /** Largest share that may be cut (common practice, no source). */
    private static final double LARGEST_CUT = 1e-3;

    /** Nodes of the torus; two arrays of numbers are needed for them, 128 MiB at most. */
    private static final int MOST_NODES = 1 << 23;

    /** How often the first torus may be doubled. */
    private static final int MOST_DOUBLINGS = 6;

    private final Lattice lattice;
    private final double[] amplitude;
    private final int columns;

    private CirculantEmbedding(Lattice lattice, int columns, double[] amplitude) {
        this.lattice = lattice;
        this.columns = columns;
        this.amplitude = amplitude;
    }

    /**
     * An embedding.
     *
     * @param lattice where fields are wanted
     * @param covariance of the fields
     * @throws IllegalArgumentException if the range is too long for the lattice
     */
    static CirculantEmbedding of(Lattice lattice, Covariance covariance) {
        int columns = powerOfTwo(2 * (lattice.columns() - 1));
        int rows = powerOfTwo(2 * (lattice.rows() - 1));
        requireSize(lattice, covariance, columns, rows);
        double varied = 1
                - covariance.at(lattice.columns() * lattice.width(), lattice.rows() * lattice.height())
                        / covariance.variance();
        for (int doublings = 0; true; doublings++) {
            double[] eigenvalues = eigenvalues(lattice, covariance, columns, rows);
            double cut = 0;
            double kept = 0;
            for (double eigenvalue : eigenvalues) {
                cut += Math.max(0, -eigenvalue);
                kept += Math.max(0, eigenvalue);
            }
            boolean canGrow = doublings < MOST_DOUBLINGS && 2L * columns * rows <= MOST_NODES;
            if (cut <= (canGrow ? NEGLIGIBLE_CUT : LARGEST_CUT) * varied * kept) {
                return new CirculantEmbedding(lattice, columns, amplitudes(eigenvalues, (kept - cut) / kept));
            }
            if (!canGrow) {
                throw tooLong(lattice, covariance);
            }
            boolean alongX = columns * lattice.width() / covariance.reachEast()
                    < rows * lattice.height() / covariance.reachNorth();
            columns *= alongX ? 2 : 1;
            rows *= alongX ? 1 : 2;
        }
    }

    private static void requireSize(Lattice lattice, Covariance covariance, int columns, int rows) {
        if ((long) columns * rows > MOST_NODES) {
            throw tooLong(lattice, covariance);
        }
    }

    private static IllegalArgumentException tooLong(Lattice lattice, Covariance covariance) {
        return new IllegalArgumentException(
                "a range of " + PlainNumber.of(covariance.range()) + " m, which is too long for an area of "
                        + PlainNumber.of(lattice.columns() * lattice.width()) + " by "
                        + PlainNumber.of(lattice.rows() * lattice.height()) + " m in cells of "
                        + PlainNumber.of(lattice.width()) + " by " + PlainNumber.of(lattice.height()) + " m");
    }

    private static int powerOfTwo(int atLeast) {
        return atLeast <= 2 ? 2 : Integer.highestOneBit(atLeast - 1) << 1;
    }

    /** Eigenvalues of the circulant matrix: the transform of the covariances with one node of the torus. */
    private static double[] eigenvalues(Lattice lattice, Covariance covariance, int columns, int rows) {
        double[] real = new double[columns * rows];
        for (int row = 0; row < rows; row++) {
            double north = shorterWay(row, rows) * lattice.height();
            for (int column = 0; column < columns; column++) {
                double east = shorterWay(column, columns) * lattice.width();
                real[row * columns + column] = 2 * column == columns || 2 * row == rows
                        // Both ways round are equally short, and where the axes are oblique not alike.
                        ? 0.5 * (covariance.at(east, north) + covariance.at(-east, north))
                        : covariance.at(east, north);
            }
        }
        PlaneTransform.forward(columns, real, new double[columns * rows]);
        return real;
    }

    private static int shorterWay(int step, int nodes) {
        return 2 * step <= nodes ? step : step - nodes;
    }

    private static double[] amplitudes(double[] eigenvalues, double share) {
        double[] amplitude = new double[eigenvalues.length];
        for (int k = 0; k < amplitude.length; k++) {
            amplitude[k] = Math.sqrt(share * Math.max(0, eigenvalues[k]) / amplitude.length);
        }
        return amplitude;
    }

    /**
     * Draws a field with mean zero.
     *
     * @param random gives the independent normal numbers
     * @return one value a cell of the lattice
     */
    double[] draw(RandomGenerator random) {
        double[] real = new double[amplitude.length];
        double[] imaginary = new double[amplitude.length];
        for (int k = 0; k < amplitude.length; k++) {
            real[k] = amplitude[k] * random.nextGaussian();
            imaginary[k] = amplitude[k] * random.nextGaussian();
        }
        PlaneTransform.forward(columns, real, imaginary);
        double[] field = new double[lattice.count()];
        for (int row = 0; row < lattice.rows(); row++) {
            System.arraycopy(real, row * columns, field, row * lattice.columns(), lattice.columns());
        }
        return field;
    }
}
