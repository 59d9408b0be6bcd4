package org.headfall.scenarios.quantity;

/**
 * A unit: one from the table or a product of them.
 *
 * @param symbol the unit as written
 * @param exponents powers of the base quantities
 * @param factor what turns a number in this unit into metres and days (pressure kPa, temperature degC)
 */
public record Unit(String symbol, Exponents exponents, ExactFactor factor) {
    static final Unit ONE = new Unit("1", Exponents.NONE, ExactFactor.ONE);

    /**
     * Reads a unit and checks that it is one of the given dimension.
     *
     * @param text the unit as typed, such as {@code L/s}
     * @param dimension what the unit has to measure
     * @throws QuantityException if a symbol is not in the table or the unit measures something else
     */
    public static Unit parse(String text, Dimension dimension) throws QuantityException {
        Unit unit = new UnitParser(text).parse();
        dimension.check(unit, text);
        return unit;
    }

    /**
     * Whether a text is a unit of any dimension.
     *
     * @param text a text, such as {@code L/s}
     */
    public static boolean isUnit(String text) {
        try {
            return !text.isBlank() && !new UnitParser(text).parse().equals(ONE);
        } catch (QuantityException noUnit) {
            return false;
        }
    }

    /** One of this unit in metres and days (kPa, degC), rounded to the nearest double. */
    public double toMetresAndDays() {
        return factor.toDouble();
    }

    Unit times(Unit other, int power) {
        return new Unit(symbol, exponents.plus(other.exponents.times(power)), factor.times(other.factor.power(power)));
    }
}
