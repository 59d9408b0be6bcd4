package org.headfall.solver.linear;

/**
 * Loops over the cells of half a row, in single precision. Every array is read and written at one index, and no loop
 * touches more than six arrays: the compiler of Java 17 turns such loops into vector instructions, and others not.
 */
final class RowKernels {
    private RowKernels() {}

    /** {@code out = a b}. */
    static void product(float[] out, float[] a, float[] b, int length) {
        for (int i = 0; i < length; i++) {
            out[i] = a[i] * b[i];
        }
    }

    /** {@code out = a b + c}. */
    static void productPlus(float[] out, float[] a, float[] b, float[] c, int length) {
        for (int i = 0; i < length; i++) {
            out[i] = a[i] * b[i] + c[i];
        }
    }

    /** {@code out = a b + c d}. */
    static void products(float[] out, float[] a, float[] b, float[] c, float[] d, int length) {
        for (int i = 0; i < length; i++) {
            out[i] = a[i] * b[i] + c[i] * d[i];
        }
    }

    /** {@code out = a b + c d + plus}. */
    static void productsPlus(float[] out, float[] a, float[] b, float[] c, float[] d, float[] plus, int length) {
        for (int i = 0; i < length; i++) {
            out[i] = a[i] * b[i] + c[i] * d[i] + plus[i];
        }
    }

    /** {@code out = scale (a b + c + d)}. */
    static void scaledSum(float[] out, float[] scale, float[] a, float[] b, float[] c, float[] d, int length) {
        for (int i = 0; i < length; i++) {
            out[i] = scale[i] * (a[i] * b[i] + c[i] + d[i]);
        }
    }

    /** {@code out = a b + c + d}. */
    static void sum(float[] out, float[] a, float[] b, float[] c, float[] d, int length) {
        for (int i = 0; i < length; i++) {
            out[i] = a[i] * b[i] + c[i] + d[i];
        }
    }
}
