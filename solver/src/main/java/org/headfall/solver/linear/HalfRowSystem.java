package org.headfall.solver.linear;

/**
 * A right-hand side whose answer is in double precision and whose other vectors are in single precision: half the bytes,
 * and in the form in which {@link PointMultigrid} takes them. What single precision takes from the recursive residual is
 * made good by recomputing it from the answer, in double precision, whenever it has fallen by {@link #recursionDepth}.
 */
final class HalfRowSystem extends KrylovSystem {
    /** Changes of scale by up to this power of two lose no digit that {@link RowKernels#rounded} would keep. */
    private static final int EXACT_EXPONENT = 40;

    /** What single precision takes from a residual, some 1e-7 of the largest, is then a thousandth of what is left. */
    private static final double RECURSION_DEPTH = 1e-4;

    final HalfRows residual;
    final HalfRows correction;
    private final HalfRows direction;
    private final HalfRows image;
    private final HalfRowProduct product;
    private final int columns;
    private final int half;
    private final HalfRowWorkspace[] workspaces;

    private double scale = 1;
    /** Last change of the scale. */
    private double change = 1;

    /** Makes a system for rows that are worked on in as many parts at once as there are workspaces. */
    HalfRowSystem(FivePointMatrix matrix, HalfRowProduct product, HalfRowWorkspace[] workspaces) {
        super(matrix);
        int rows = matrix.rows();
        this.columns = matrix.columns();
        this.half = (columns + 1) / 2;
        this.residual = new HalfRows(columns, rows);
        this.correction = new HalfRows(columns, rows);
        this.direction = new HalfRows(columns, rows);
        this.image = new HalfRows(columns, rows);
        this.product = product;
        this.workspaces = workspaces;
    }

    @Override
    double recursionDepth() {
        return RECURSION_DEPTH;
    }

    @Override
    double rescale(double norm) {
        double former = scale;
        scale = RowKernels.scaleOf(norm);
        change = scale / former;
        return change;
    }

    @Override
    void takeRightHandSide(int row) {
        take(row, rightHandSide, row * columns);
    }

    @Override
    double takeResidual(int row, int part) {
        double[] values = workspaces[part].row;
        double squares = matrix.residualRow(rightHandSide, solution, values, row, row * columns);
        take(row, values, 0);
        if (!isFirstStart()) {
            RowKernels.round(residual.even(row), half);
            RowKernels.round(residual.odd(row), half);
        }
        return squares;
    }

    /** Scales a row of numbers, from a place on, to the residual. */
    private void take(int row, double[] values, int place) {
        float[] even = residual.even(row);
        float[] odd = residual.odd(row);
        for (int i = 0; i < columns / 2; i++) {
            even[i] = (float) (scale * values[place + 2 * i]);
            odd[i] = (float) (scale * values[place + 2 * i + 1]);
        }
        if (columns % 2 == 1) {
            even[half - 1] = (float) (scale * values[place + columns - 1]);
        }
    }

    /** The first residual was taken at the scale of the last solve, which changes nothing if the two are not far apart. */
    @Override
    void settleRow(int row, int part) {
        if (Math.abs(Math.getExponent(change)) > EXACT_EXPONENT) {
            if (isRightHandSide()) {
                takeRightHandSide(row);
            } else {
                takeResidual(row, part);
            }
            scaleRow(row, 1);
        } else {
            scaleRow(row, (float) change);
        }
    }

    private void scaleRow(int row, float factor) {
        RowKernels.scaleAndRound(residual.even(row), factor, half);
        RowKernels.scaleAndRound(residual.odd(row), factor, half);
    }

    @Override
    void combineRow(int row, double factor) {
        for (int parity = 0; parity < 2; parity++) {
            float[] target = direction.half(row, parity);
            if (factor == 0) {
                System.arraycopy(correction.half(row, parity), 0, target, 0, half);
            } else {
                RowKernels.combine(target, correction.half(row, parity), (float) factor, half);
            }
        }
    }

    @Override
    double multiplyRow(int row, int part) {
        return product.row(direction, image, row, workspaces[part]);
    }

    @Override
    double stepRow(int row, int part, double length) {
        float[] even = residual.even(row);
        float[] odd = residual.odd(row);
        if (length > 0) {
            float step = (float) length;
            RowKernels.subtract(even, image.even(row), step, half);
            RowKernels.subtract(odd, image.odd(row), step, half);
            addToSolution(row, step / scale);
        }
        HalfRowWorkspace work = workspaces[part];
        return RowKernels.innerProduct(even, even, odd, odd, work.even, work.odd, half);
    }

    private void addToSolution(int row, double length) {
        float[] even = direction.even(row);
        float[] odd = direction.odd(row);
        int first = row * columns;
        for (int i = 0; i < columns / 2; i++) {
            solution[first + 2 * i] += length * even[i];
            solution[first + 2 * i + 1] += length * odd[i];
        }
        if (columns % 2 == 1) {
            solution[first + columns - 1] += length * even[half - 1];
        }
    }

    @Override
    double normOf(double squares) {
        return Math.sqrt(squares / RowKernels.SQUARE_SCALE) / scale;
    }
}
