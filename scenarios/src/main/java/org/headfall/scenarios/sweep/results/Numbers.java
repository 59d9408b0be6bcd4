package org.headfall.scenarios.sweep.results;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;

/** Numbers for readers. */
public final class Numbers {

    private static final MathContext DIGITS = new MathContext(4);
    private static final MathContext ERROR_DIGITS = new MathContext(2);
    private static final double LARGE = 1e6;
    private static final double SMALL = 1e-4;
    private static final double PER_CENT = 100;

    private Numbers() {}

    /** Four digits; a dash for none. */
    public static String words(double value) {
        return Double.isFinite(value) ? written(new BigDecimal(value).round(DIGITS)) : "–";
    }

    /** An error of sampling, which two digits of say enough. */
    public static String error(double value) {
        return Double.isFinite(value) ? written(new BigDecimal(value).round(ERROR_DIGITS)) : "–";
    }

    /** All digits of a number as it was given. */
    public static String exact(double value) {
        return written(new BigDecimal(Double.toString(value)));
    }

    /** Without exponent unless that is far shorter. */
    private static String written(BigDecimal value) {
        BigDecimal plain = value.stripTrailingZeros();
        double size = plain.abs().doubleValue();
        if (size != 0 && (size >= LARGE || size < SMALL)) {
            int exponent = plain.precision() - plain.scale() - 1;
            return plain.movePointLeft(exponent).stripTrailingZeros().toPlainString() + "e" + exponent;
        }
        return plain.scale() < 0 ? plain.setScale(0).toPlainString() : plain.toPlainString();
    }

    /** A share as whole per cent; a dash for none. */
    public static String perCent(double share) {
        return Double.isNaN(share) ? "–" : String.format(Locale.ROOT, "%.0f %%", PER_CENT * share);
    }

    /** A place in a picture. */
    public static String place(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }
}
