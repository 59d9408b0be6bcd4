package org.headfall.solver.linear;

/**
 * Rows of a grid shared out to threads in parts of about the same size.
 *
 * @param rows number of rows
 * @param parts number of parts, at least 1
 */
record RowParts(int rows, int parts) {

    /**
     * Shares out rows.
     *
     * @param rows number of rows
     * @param threads most parts that are of use
     * @param grain least number of rows worth a part of their own
     */
    static RowParts of(int rows, int threads, int grain) {
        return new RowParts(rows, Math.max(1, Math.min(threads, rows / Math.max(1, grain))));
    }

    /** {@return the first row of a part; of the one after the last, the number of rows} */
    int first(int part) {
        return (int) ((long) rows * part / parts);
    }
}
