package org.headfall.scenarios.vector;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Coordinates in messages. */
final class CoordinateWords {
    private CoordinateWords() {}

    static String of(double x, double y) {
        return "x " + plain(x) + ", y " + plain(y);
    }

    private static String plain(double value) {
        BigDecimal rounded = new BigDecimal(value).setScale(6, RoundingMode.HALF_EVEN);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }
}
