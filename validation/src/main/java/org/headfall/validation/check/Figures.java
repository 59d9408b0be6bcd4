package org.headfall.validation.check;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers as text, with a point whatever the locale. */
public final class Figures {

    private static final double PLAIN_FROM = 1e-4;
    private static final double PLAIN_BELOW = 1e7;

    private Figures() {}

    /**
     * A number to some significant digits, in plain notation where that is short.
     *
     * @param value the number
     * @param digits significant digits, at least 1
     * @return such as "0.0356" or "2.1E-9"
     */
    public static String significant(double value, int digits) {
        if (value == 0 || !Double.isFinite(value)) {
            return value == 0 ? "0" : Double.toString(value);
        }
        BigDecimal rounded = new BigDecimal(value).round(new MathContext(digits, RoundingMode.HALF_EVEN));
        double size = Math.abs(value);
        return size >= PLAIN_FROM && size < PLAIN_BELOW
                ? rounded.stripTrailingZeros().toPlainString()
                : rounded.stripTrailingZeros().toString();
    }

    /**
     * Half a unit of the last digit of a printed number, with a little room for the binary fraction.
     *
     * @param printed the number as printed
     * @return largest error of a correctly rounded print
     */
    public static double halfUnitOfLastDigit(String printed) {
        return 0.5 * (1 + 1e-9) * new BigDecimal(printed).ulp().doubleValue();
    }
}
