package org.headfall.solver.linear;

/** Exchange of rows and columns of a field, in tiles that stay in cache. */
final class Transposition {
    private static final int TILE = 16;

    private Transposition() {}

    /** Writes the transposed field to {@code target} from {@code offset} on. */
    static void transpose(double[] source, int columns, double[] target, int offset) {
        int rows = source.length / columns;
        for (int r0 = 0; r0 < rows; r0 += TILE) {
            for (int c0 = 0; c0 < columns; c0 += TILE) {
                int r1 = Math.min(rows, r0 + TILE);
                int c1 = Math.min(columns, c0 + TILE);
                for (int c = c0; c < c1; c++) {
                    for (int r = r0; r < r1; r++) {
                        target[offset + c * rows + r] = source[r * columns + c];
                    }
                }
            }
        }
    }

    /** Writes the field found transposed, with rows of the given length, from {@code offset} on. */
    static void transposeBack(double[] source, int offset, int columns, double[] target) {
        int rows = target.length / columns;
        for (int r0 = 0; r0 < rows; r0 += TILE) {
            for (int c0 = 0; c0 < columns; c0 += TILE) {
                int r1 = Math.min(rows, r0 + TILE);
                int c1 = Math.min(columns, c0 + TILE);
                for (int c = c0; c < c1; c++) {
                    for (int r = r0; r < r1; r++) {
                        target[c * rows + r] = source[offset + r * columns + c];
                    }
                }
            }
        }
    }
}
