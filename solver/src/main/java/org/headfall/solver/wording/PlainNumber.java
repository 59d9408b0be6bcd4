package org.headfall.solver.wording;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * A number as people write it in a sentence: 0.00005, 700 or 18262.5, not 5.0E-5, 700.0 or 0.010950000000000001. Very large and
 * very small numbers keep a power of ten: 1e-9.
 */
public final class PlainNumber {

    /** All that anybody types, and none of what binary fractions add to it. */
    private static final MathContext AS_TYPED = new MathContext(12, RoundingMode.HALF_EVEN);

    private static final int DIGITS_OF_COMPUTED = 4;
    private static final double LARGEST = 1e12;
    private static final double SMALLEST = 1e-7;

    private PlainNumber() {}

    /**
     * A number that somebody has given, with the digits that it was given with.
     *
     * @param value the number
     * @return such as {@code 0.00005}; {@code NaN} or {@code Infinity} as Java writes them
     */
    public static String of(double value) {
        return Double.isFinite(value) ? written(BigDecimal.valueOf(value).round(AS_TYPED)) : Double.toString(value);
    }

    /**
     * A number that has been computed, with four digits that count and never less than its whole part.
     *
     * @param value the number
     * @return such as {@code 0.03457} or {@code 18263}
     */
    public static String about(double value) {
        if (!Double.isFinite(value)) {
            return Double.toString(value);
        }
        BigDecimal exact = BigDecimal.valueOf(value);
        int digits = Math.max(DIGITS_OF_COMPUTED, exact.precision() - exact.scale());
        return written(exact.round(new MathContext(digits, RoundingMode.HALF_EVEN)));
    }

    private static String written(BigDecimal value) {
        if (value.signum() == 0) {
            return "0";
        }
        BigDecimal plain = value.stripTrailingZeros();
        double size = plain.abs().doubleValue();
        if (size < LARGEST && size >= SMALLEST) {
            return plain.toPlainString();
        }
        int exponent = plain.precision() - plain.scale() - 1;
        return plain.movePointLeft(exponent).stripTrailingZeros().toPlainString() + "e" + exponent;
    }
}
