package org.headfall.scenarios.quantity;

/**
 * A number with its unit, as typed and in metres and days.
 *
 * @param text number and unit as typed, such as {@code 25 L/s}
 * @param dimension what it measures
 * @param value the value in the unit of the dimension ({@link Dimension#unit()}: metres and days, pressure in kPa,
 *     temperature in degC, per cent as a fraction), finite
 */
public record Quantity(String text, Dimension dimension, double value) {
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

    /** The quantity as typed. */
    @Override
    public String toString() {
        return text;
    }
}
