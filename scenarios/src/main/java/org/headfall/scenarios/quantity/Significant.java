package org.headfall.scenarios.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers of which nobody knows more than three digits, such as prices and gains. */
public final class Significant {

    private static final MathContext THREE = new MathContext(3, RoundingMode.HALF_EVEN);

    private Significant() {}

    /**
     * A number with three digits that count, without an exponent.
     *
     * @param value the number, finite
     * @return such as 1230, 12.3 or 0.00123
     */
    public static String text(double value) {
        return value == 0 ? "0" : new BigDecimal(value).round(THREE).toPlainString();
    }
}
