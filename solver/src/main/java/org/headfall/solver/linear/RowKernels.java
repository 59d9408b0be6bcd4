package org.headfall.solver.linear;

/**
 * Loops over the cells of half a row, in single precision. Every array is read and written at one index, and no loop
 * touches more than six arrays: the compiler of Java 17 turns such loops into vector instructions, and others not.
 */
final class RowKernels {
    /** Binary exponent that residuals are scaled to, for room above and below in single precision. */
    private static final int EXPONENT = 60;
    /** Values are rounded to the last place of this one, 2^-60 of a scaled residual's norm. */
    private static final float ROUNDING = 0x1p23f;
    /** Corrections are rounded to the last place of this one, 2^-130 of the norm over a diagonal of one. */
    private static final float CORRECTION_ROUNDING = 0x1p-47f;

    /** Inner products of scaled vectors are multiplied by this power of two to stay within single precision. */
    static final double SQUARE_SCALE = 0x1p-60;

    private static final float SQUARE_FACTOR = 0x1p-60f;

    /** Numbers that are added up one by one in the end. */
    private static final int SUMMED_LENGTH = 16;

    private RowKernels() {}

    /**
     * Returns the power of two that brings a residual of some norm to where single precision has room.
     *
     * @param norm 2-norm, positive and finite
     */
    static double scaleOf(double norm) {
        return Math.scalb(1.0, EXPONENT - Math.max(-900, Math.min(900, Math.getExponent(norm))));
    }

    /**
     * Rounds a row of scaled residuals to multiples of 2^-60 of the norm. Residuals fall off with distance from a source to
     * below what single precision holds, and numbers that have lost their leading bits are computed 100 times slower.
     */
    static void round(float[] values, int length) {
        for (int i = 0; i < length; i++) {
            values[i] = (values[i] + ROUNDING) - ROUNDING;
        }
    }

    /** Rounds a row of coarse corrections likewise, before they are spread over a finer grid. */
    static void roundCorrections(float[] values, int length) {
        for (int i = 0; i < length; i++) {
            values[i] = (values[i] + CORRECTION_ROUNDING) - CORRECTION_ROUNDING;
        }
    }

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

    /** {@code out = scale (a + b)}. */
    static void scaledSum(float[] out, float[] scale, float[] a, float[] b, int length) {
        for (int i = 0; i < length; i++) {
            out[i] = scale[i] * (a[i] + b[i]);
        }
    }

    /** {@code out = a - b c}. */
    static void lessProduct(float[] out, float[] a, float[] b, float[] c, int length) {
        for (int i = 0; i < length; i++) {
            out[i] = a[i] - b[i] * c[i];
        }
    }

    /** {@code out = a b + c + d}. */
    static void sum(float[] out, float[] a, float[] b, float[] c, float[] d, int length) {
        for (int i = 0; i < length; i++) {
            out[i] = a[i] * b[i] + c[i] + d[i];
        }
    }

    /** {@code out = round(a + factor out)}, to the same multiples as corrections. */
    static void combine(float[] out, float[] a, float factor, int length) {
        for (int i = 0; i < length; i++) {
            out[i] = ((a[i] + factor * out[i]) + CORRECTION_ROUNDING) - CORRECTION_ROUNDING;
        }
    }

    /** {@code out = round(out - factor a)}, to the same multiples as residuals. */
    static void subtract(float[] out, float[] a, float factor, int length) {
        for (int i = 0; i < length; i++) {
            out[i] = ((out[i] - factor * a[i]) + ROUNDING) - ROUNDING;
        }
    }

    /** {@code out = round(factor out)}, to the same multiples as residuals. */
    static void scaleAndRound(float[] out, float factor, int length) {
        for (int i = 0; i < length; i++) {
            out[i] = (factor * out[i] + ROUNDING) - ROUNDING;
        }
    }

    /**
     * Returns {@link #SQUARE_SCALE} times the sum of {@code a b + c d}, added up in pairs of halves.
     *
     * @param terms room for the products
     * @param others room for half of them
     */
    static double innerProduct(float[] a, float[] b, float[] c, float[] d, float[] terms, float[] others, int length) {
        for (int i = 0; i < length; i++) {
            terms[i] = (SQUARE_FACTOR * a[i]) * b[i] + (SQUARE_FACTOR * c[i]) * d[i];
        }
        int left = length;
        while (left > SUMMED_LENGTH) {
            int lower = (left + 1) / 2;
            System.arraycopy(terms, lower, others, 0, left - lower);
            add(terms, others, left - lower);
            left = lower;
        }
        double sum = 0;
        for (int i = 0; i < left; i++) {
            sum += terms[i];
        }
        return sum;
    }

    /** {@code out = out + a}. */
    static void add(float[] out, float[] a, int length) {
        for (int i = 0; i < length; i++) {
            out[i] += a[i];
        }
    }

    /** {@code out = coupling (from - to)}. */
    static void flow(float[] out, float[] coupling, float[] from, float[] to, int length) {
        for (int i = 0; i < length; i++) {
            out[i] = coupling[i] * (from[i] - to[i]);
        }
    }

    /** {@code out = out + coupling (from - to)}. */
    static void addFlow(float[] out, float[] coupling, float[] from, float[] to, int length) {
        for (int i = 0; i < length; i++) {
            out[i] += coupling[i] * (from[i] - to[i]);
        }
    }

    /** {@code out = a from + coupling (from - to)}. */
    static void productPlusFlow(float[] out, float[] a, float[] from, float[] coupling, float[] to, int length) {
        for (int i = 0; i < length; i++) {
            out[i] = a[i] * from[i] + coupling[i] * (from[i] - to[i]);
        }
    }

    /** {@code out = a + plus - minus}. */
    static void sumAndDifference(float[] out, float[] a, float[] plus, float[] minus, int length) {
        for (int i = 0; i < length; i++) {
            out[i] = a[i] + plus[i] - minus[i];
        }
    }
}
