package org.headfall.scenarios.sweep.results;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;

/** Numbers for readers. */
public final class Numbers {

    private static final MathContext DIGITS = new MathContext(4);
    private static final double LARGE = 1e6;
    private static final double SMALL = 1e-4;
    private static final double PER_CENT = 100;

    private Numbers() {}

    /** Four digits; a dash for none. */
    public static String words(double value) {
        if (!Double.isFinite(value)) {
            return "–";
        }
        double size = Math.abs(value);
        if (size != 0 && (size >= LARGE || size < SMALL)) {
            return String.format(Locale.ROOT, "%.3g", value);
        }
        BigDecimal rounded = new BigDecimal(value).round(DIGITS).stripTrailingZeros();
        return rounded.scale() < 0 ? rounded.setScale(0).toPlainString() : rounded.toPlainString();
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
