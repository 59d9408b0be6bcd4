package org.headfall.scenarios.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.regex.Pattern;

/**
 * A number with its unit, as typed and in metres and days.
 *
 * @param text number and unit as typed, such as {@code 25 L/s}
 * @param dimension what it measures
 * @param value the value in the unit of the dimension ({@link Dimension#unit()}: metres and days, pressure in kPa,
 *     temperature in degC, per cent as a fraction), finite
 */
public record Quantity(String text, Dimension dimension, double value) {
    private static final Pattern NUMBER = Pattern.compile("^\\s*[-+]?[\\d.]+([eE][-+]?\\d+)?");
    private static final MathContext SHOWN = new MathContext(10, RoundingMode.HALF_EVEN);

    /**
     * Checks the value.
     *
     * @throws IllegalArgumentException if the value is not finite
     */
    public Quantity {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("a quantity is finite, not " + value);
        }
    }

    /** The unit as typed; empty for a pure number without one. */
    public String unit() {
        return NUMBER.matcher(text).replaceFirst("").strip();
    }

    /**
     * Another value in the unit as typed, to ten digits, which hide what is left of rounding when units are converted.
     *
     * @param other a value in the unit of the dimension; may be infinite
     */
    public double inUnit(double other) {
        if (unit().isEmpty() || Double.isInfinite(other)) {
            return other;
        }
        try {
            double size = QuantityParser.parse("1 " + unit(), dimension).value();
            return new BigDecimal(other / size).round(SHOWN).doubleValue();
        } catch (QuantityException impossible) {
            throw new IllegalStateException("a unit that has been read: " + unit(), impossible);
        }
    }

    /** The quantity as typed. */
    @Override
    public String toString() {
        return text;
    }
}
