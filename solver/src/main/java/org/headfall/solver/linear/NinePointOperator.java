package org.headfall.solver.linear;

/**
 * Symmetric nine-point operator on a grid of a multigrid hierarchy, in double precision while the hierarchy is set up.
 *
 * <p>Couplings have the sign of conductances: the matrix has their negatives off the diagonal. Arrays are padded by a row
 * below and above and by a cell at both ends, all zero, so that kernels need no branches at the rim: see {@link #index}.
 */
final class NinePointOperator {
    final int columns;
    final int rows;
    /** Diagonal. */
    final double[] diagonal;
    /** Coupling of (column, row) with (column + 1, row). */
    final double[] east;
    /** Coupling of (column, row) with (column, row + 1). */
    final double[] north;
    /** Coupling of (column, row) with (column + 1, row + 1). */
    final double[] northEast;
    /** Coupling of (column, row) with (column - 1, row + 1). */
    final double[] northWest;

    /** Makes an operator without values. */
    NinePointOperator(int columns, int rows) {
        this(columns, rows, new double[paddedLength(columns, rows)], new double[paddedLength(columns, rows)]);
    }

    private NinePointOperator(int columns, int rows, double[] northEast, double[] northWest) {
        this.columns = columns;
        this.rows = rows;
        int length = paddedLength(columns, rows);
        this.diagonal = new double[length];
        this.east = new double[length];
        this.north = new double[length];
        this.northEast = northEast;
        this.northWest = northWest;
    }

    /** Makes an operator for {@link #copy}: without couplings across corners, whose zeros stand in memory once. */
    static NinePointOperator ofFivePoints(int columns, int rows) {
        double[] none = new double[paddedLength(columns, rows)];
        return new NinePointOperator(columns, rows, none, none);
    }

    static int paddedLength(int columns, int rows) {
        return (rows + 2) * columns + 2;
    }

    /** Returns the place of a cell in the padded arrays. */
    int index(int column, int row) {
        return (row + 1) * columns + column + 1;
    }

    /** Takes over a five-point matrix. */
    void copy(FivePointMatrix matrix) {
        int cells = matrix.cells();
        int first = index(0, 0);
        System.arraycopy(matrix.diagonal(), 0, diagonal, first, cells);
        System.arraycopy(matrix.east(), 0, east, first, cells);
        System.arraycopy(matrix.north(), 0, north, first, cells);
    }
}
