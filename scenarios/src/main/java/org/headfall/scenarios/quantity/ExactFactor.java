package org.headfall.scenarios.quantity;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;

/**
 * A positive fraction in lowest terms, by which a number in some unit is multiplied to give metres and days.
 *
 * @param numerator above the line, positive
 * @param denominator below the line, positive
 */
public record ExactFactor(BigInteger numerator, BigInteger denominator) {
    static final ExactFactor ONE = of(1, 1);
    /** Digits carried before the one rounding to double; 17 would do, the rest keeps ties apart. */
    private static final MathContext DIGITS = new MathContext(60);

    /** Whole numbers of so many bits are doubles. */
    private static final int WHOLE_BITS = 53;

    private static final int MOST_DECIMALS = 15;
    private static final BigInteger TOO_LARGE = BigInteger.ONE.shiftLeft(WHOLE_BITS);

    static ExactFactor of(long numerator, long denominator) {
        return lowest(BigInteger.valueOf(numerator), BigInteger.valueOf(denominator));
    }

    private static ExactFactor lowest(BigInteger numerator, BigInteger denominator) {
        BigInteger common = numerator.gcd(denominator);
        return new ExactFactor(numerator.divide(common), denominator.divide(common));
    }

    ExactFactor times(ExactFactor other) {
        return lowest(numerator.multiply(other.numerator), denominator.multiply(other.denominator));
    }

    ExactFactor power(int power) {
        return power >= 0
                ? new ExactFactor(numerator.pow(power), denominator.pow(power))
                : new ExactFactor(denominator.pow(-power), numerator.pow(-power));
    }

    /** The product with a decimal number, rounded once. */
    double times(BigDecimal number) {
        BigInteger above = number.unscaledValue().multiply(numerator);
        BigInteger below = number.scale() >= 0 && number.scale() <= MOST_DECIMALS
                ? BigInteger.TEN.pow(number.scale()).multiply(denominator)
                : TOO_LARGE;
        // Two whole numbers that a double holds exactly: their quotient is rounded once by the processor itself.
        if (above.bitLength() <= WHOLE_BITS && below.bitLength() <= WHOLE_BITS) {
            return above.doubleValue() / below.doubleValue();
        }
        return number.multiply(new BigDecimal(numerator))
                .divide(new BigDecimal(denominator), DIGITS)
                .doubleValue();
    }

    /** The factor as the nearest double. */
    double toDouble() {
        return times(BigDecimal.ONE);
    }
}
