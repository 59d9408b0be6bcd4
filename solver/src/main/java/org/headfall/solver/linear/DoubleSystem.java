package org.headfall.solver.linear;

/** A right-hand side whose vectors are in double precision, cell by cell. */
final class DoubleSystem extends KrylovSystem {
    /** Some fifty times the rounding of double precision. */
    private static final double RECURSION_DEPTH = 1e-14;

    final double[] residual;
    final double[] correction;
    private final int columns;
    private final double[] direction;
    private final double[] image;

    DoubleSystem(FivePointMatrix matrix) {
        super(matrix);
        int cells = matrix.cells();
        this.columns = matrix.columns();
        this.residual = new double[cells];
        this.correction = new double[cells];
        this.direction = new double[cells];
        this.image = new double[cells];
    }

    @Override
    double recursionDepth() {
        return RECURSION_DEPTH;
    }

    @Override
    double rescale(double norm) {
        return 1;
    }

    @Override
    void settleRow(int row, int part) {
        // Double precision needs no scale.
    }

    @Override
    void takeRightHandSide(int row) {
        System.arraycopy(rightHandSide, row * columns, residual, row * columns, columns);
    }

    @Override
    double takeResidual(int row, int part) {
        return matrix.residualRow(rightHandSide, solution, residual, row, 0);
    }

    @Override
    void combineRow(int row, double factor) {
        int from = row * columns;
        int to = from + columns;
        if (factor == 0) {
            System.arraycopy(correction, from, direction, from, to - from);
            return;
        }
        for (int k = from; k < to; k++) {
            direction[k] = correction[k] + factor * direction[k];
        }
    }

    @Override
    double multiplyRow(int row, int part) {
        return matrix.multiplyRow(direction, image, row);
    }

    @Override
    double stepRow(int row, int part, double length) {
        int from = row * columns;
        int to = from + columns;
        if (length > 0) {
            for (int k = from; k < to; k++) {
                solution[k] += length * direction[k];
            }
            for (int k = from; k < to; k++) {
                residual[k] -= length * image[k];
            }
        }
        return squares(residual, from, to);
    }

    @Override
    double normOf(double squares) {
        return Math.sqrt(squares);
    }
}
