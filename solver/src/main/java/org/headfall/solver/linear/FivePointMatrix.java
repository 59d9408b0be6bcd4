package org.headfall.solver.linear;

/**
 * Symmetric matrix of a five-point scheme on {@code columns x rows} cells, cell index {@code k = row * columns + column}.
 *
 * <p>Row k reads {@code diagonal[k] x[k] - east[k] x[k+1] - east[k-1] x[k-1] - north[k] x[k+columns] -
 * north[k-columns] x[k-columns]}. Couplings are conductances, never negative; {@code east} is zero in the last column and
 * {@code north} in the last row. The diagonal is at least the sum of a cell's couplings, which makes the matrix positive
 * semidefinite, and definite where every connected group of cells has a diagonal above that sum somewhere. A dead cell
 * has no couplings and diagonal 1. The three arrays are the matrix itself, not copies; the couplings must not change
 * after construction, the diagonal only through {@link #shiftDiagonal}.
 */
public final class FivePointMatrix {
    /** Rounding of {@code b - A x}, in parts of {@code diagonal |x|}, that a residual may be explained by. */
    private static final double ROUNDING = 16 * 0x1.0p-53;

    private final int columns;
    private final int rows;
    private final double[] diagonal;
    private final double[] east;
    private final double[] north;
    private long version;

    /**
     * Wraps the arrays of a matrix.
     *
     * @param columns number of columns, at least 1
     * @param rows number of rows, at least 1
     * @param diagonal diagonal, positive, one value a cell
     * @param east coupling of cell k with k + 1, zero in the last column
     * @param north coupling of cell k with k + columns, zero in the last row
     * @throws IllegalArgumentException if a length or a value is outside these limits; the message names array and cell
     */
    public FivePointMatrix(int columns, int rows, double[] diagonal, double[] east, double[] north) {
        if (columns < 1 || rows < 1 || (long) columns * rows > Integer.MAX_VALUE / 2) {
            throw new IllegalArgumentException("grid of " + columns + " x " + rows
                    + " cells: at least 1 x 1 and at most " + Integer.MAX_VALUE / 2 + " cells are allowed");
        }
        this.columns = columns;
        this.rows = rows;
        this.diagonal = diagonal;
        this.east = east;
        this.north = north;
        requireLength("diagonal", diagonal);
        requireLength("east", east);
        requireLength("north", north);
        requireDiagonal(diagonal);
        requireCouplings();
    }

    private void requireLength(String name, double[] values) {
        if (values.length != columns * rows) {
            throw new IllegalArgumentException(
                    name + " has " + values.length + " values, the grid has " + columns * rows + " cells");
        }
    }

    private void requireDiagonal(double[] values) {
        for (int k = 0; k < values.length; k++) {
            if (!(values[k] > 0 && values[k] < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException(
                        "diagonal of " + describeCell(k) + " is " + values[k] + ", it must be positive and finite");
            }
        }
    }

    private void requireCouplings() {
        for (int k = 0; k < east.length; k++) {
            boolean lastColumn = (k + 1) % columns == 0;
            boolean lastRow = k >= columns * (rows - 1);
            requireCoupling("east", east[k], k, lastColumn);
            requireCoupling("north", north[k], k, lastRow);
        }
    }

    private void requireCoupling(String name, double value, int cell, boolean last) {
        if (!(value >= 0 && value < Double.POSITIVE_INFINITY) || (last && value != 0)) {
            throw new IllegalArgumentException("coupling " + name + " of " + describeCell(cell) + " is " + value
                    + (last ? ", it must be zero at the edge of the grid" : ", it must be finite and not negative"));
        }
    }

    /** Returns the number of columns. */
    public int columns() {
        return columns;
    }

    /** Returns the number of rows. */
    public int rows() {
        return rows;
    }

    /** Returns the number of cells. */
    public int cells() {
        return diagonal.length;
    }

    /** Returns the live diagonal, to be read only. */
    public double[] diagonal() {
        return diagonal;
    }

    /** Returns a number that changes with the diagonal. */
    long version() {
        return version;
    }

    /** Returns the live couplings of cells k and k + 1, to be read only. */
    public double[] east() {
        return east;
    }

    /** Returns the live couplings of cells k and k + columns, to be read only. */
    public double[] north() {
        return north;
    }

    /** Returns column and row of a cell in words, for messages. */
    public String describeCell(int cell) {
        return "cell (column " + cell % columns + ", row " + cell / columns + ")";
    }

    /** Returns the sum of the couplings of a cell with its neighbours. */
    public double couplingSum(int cell) {
        double sum = east[cell] + north[cell];
        if (cell % columns > 0) {
            sum += east[cell - 1];
        }
        return cell >= columns ? sum + north[cell - columns] : sum;
    }

    /** Whether every connected group of cells has a diagonal above the sum of its couplings somewhere: solvers ask for that. */
    public boolean isTiedDown() {
        return new TiedDown(this).holds();
    }

    /**
     * Sets the diagonal to {@code base[k] + factor * weight[k]}, such as flow plus storage over a time step; solvers of
     * this matrix must then be told by {@link LinearSolver#diagonalChanged}.
     *
     * @throws IllegalArgumentException if a resulting value is not positive and finite
     */
    public void shiftDiagonal(double[] base, double factor, double[] weight) {
        requireLength("base", base);
        requireLength("weight", weight);
        for (int k = 0; k < diagonal.length; k++) {
            diagonal[k] = base[k] + factor * weight[k];
        }
        version++;
        requireDiagonal(diagonal);
    }

    /**
     * Computes {@code product = A x}.
     *
     * @param x vector, not modified
     * @param product receives the product, another array than {@code x}
     */
    public void multiply(double[] x, double[] product) {
        for (int row = 0; row < rows; row++) {
            multiplyRow(x, product, row);
        }
    }

    /** Computes a row of the grid of {@code product = A x} and returns the row's part of the inner product (x, A x). */
    double multiplyRow(double[] x, double[] product, int row) {
        int first = row * columns;
        int last = first + columns - 1;
        boolean inside = row > 0 && row + 1 < rows && columns > 2;
        double sum = 0;
        if (inside) {
            product[first] = multiplyCell(x, first);
            product[last] = multiplyCell(x, last);
            sum = multiplyInside(x, product, first + 1, last) + x[first] * product[first] + x[last] * product[last];
        } else {
            for (int k = first; k <= last; k++) {
                product[k] = multiplyCell(x, k);
                sum += x[k] * product[k];
            }
        }
        return sum;
    }

    /** Cells with all four neighbours; what a cell has in common with the one before it is carried along. */
    private double multiplyInside(double[] x, double[] product, int from, int to) {
        int stride = columns;
        double sum = 0;
        double west = east[from - 1] * x[from - 1];
        double value = x[from];
        for (int k = from; k < to; k++) {
            double coupling = east[k];
            double next = x[k + 1];
            double vertical = north[k] * x[k + stride] + north[k - stride] * x[k - stride];
            double image = diagonal[k] * value - coupling * next - west - vertical;
            product[k] = image;
            sum += value * image;
            west = coupling * value;
            value = next;
        }
        return sum;
    }

    private double multiplyCell(double[] x, int k) {
        int column = k % columns;
        double sum = diagonal[k] * x[k];
        if (column + 1 < columns) {
            sum -= east[k] * x[k + 1];
        }
        if (column > 0) {
            sum -= east[k - 1] * x[k - 1];
        }
        if (k + columns < diagonal.length) {
            sum -= north[k] * x[k + columns];
        }
        return k >= columns ? sum - north[k - columns] * x[k - columns] : sum;
    }

    /**
     * Computes {@code residual = b - A x}.
     *
     * @param rightHandSide b, not modified
     * @param x vector, not modified
     * @param residual receives the residual, another array than {@code x}; may be {@code rightHandSide}
     */
    public void residual(double[] rightHandSide, double[] x, double[] residual) {
        for (int row = 0; row < rows; row++) {
            residualRow(rightHandSide, x, residual, row, 0);
        }
    }

    /**
     * Computes a row of the grid of {@code residual = b - A x} and returns its part of the residual's squared norm. Cell k
     * of the residual goes to place {@code k - shift}.
     */
    double residualRow(double[] rightHandSide, double[] x, double[] residual, int row, int shift) {
        int first = row * columns;
        int last = first + columns - 1;
        boolean inside = row > 0 && row + 1 < rows && columns > 2;
        if (inside) {
            residualInside(rightHandSide, x, residual, first + 1, last, shift);
        }
        for (int k = first; k <= last; k += inside ? columns - 1 : 1) {
            residual[k - shift] = rightHandSide[k] - multiplyCell(x, k);
        }
        return KrylovSystem.squares(residual, first - shift, last + 1 - shift);
    }

    /** Squares are left to a loop of their own: a sum that each cell waits for takes longer than the rest. */
    private void residualInside(double[] rightHandSide, double[] x, double[] residual, int from, int to, int shift) {
        int stride = columns;
        double west = east[from - 1] * x[from - 1];
        double value = x[from];
        for (int k = from; k < to; k++) {
            double coupling = east[k];
            double next = x[k + 1];
            double vertical = north[k] * x[k + stride] + north[k - stride] * x[k - stride];
            residual[k - shift] = rightHandSide[k] - (diagonal[k] * value - coupling * next - west - vertical);
            west = coupling * value;
            value = next;
        }
    }

    /** Returns the 2-norm of what rounding may leave in {@code b - A x} for the best x there is in double precision. */
    double residualRounding(double[] x) {
        double sum = 0;
        for (int k = 0; k < diagonal.length; k++) {
            double terms = diagonal[k] * Math.abs(x[k]);
            sum += terms * terms;
        }
        return ROUNDING * Math.sqrt(sum);
    }

    @Override
    public String toString() {
        return "five-point matrix of " + columns + " x " + rows + " cells";
    }
}
