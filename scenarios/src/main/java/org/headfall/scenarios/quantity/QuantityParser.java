package org.headfall.scenarios.quantity;

import java.math.BigDecimal;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.jspecify.annotations.Nullable;

/**
 * Reads numbers and quantities.
 *
 * <p>A number has a point for the decimals, no marks between thousands, and may have an exponent ({@code 1e-6}). Not
 * a number: NaN, infinity, hexadecimal, a decimal comma.
 */
public final class QuantityParser {
    private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+(\\.\\d*)?|\\.\\d+)([eE][+-]?\\d+)?");
    private static final Pattern COMMA = Pattern.compile("[+-]?\\d+,\\d+.*", Pattern.DOTALL);
    private static final String NUMBER_ALLOWED = "digits with a decimal point, such as 1250.5 or 2.0e-4";
    private static final int LONGEST_NUMBER = 60;

    private QuantityParser() {}

    /**
     * Reads a number with its unit.
     *
     * @param text what was typed, such as {@code 350 m2/d}; for a pure number the unit may be left out
     * @param dimension what it has to measure
     * @return the quantity, its value rounded once from the exact product
     * @throws QuantityException if the text is not such a quantity
     */
    public static Quantity parse(String text, Dimension dimension) throws QuantityException {
        String stripped = text.strip();
        if (stripped.isEmpty()) {
            throw new QuantityException(Finding.of(ProblemKind.EMPTY_VALUE, "nothing", dimension.allowed()));
        }
        Matcher number = NUMBER.matcher(stripped);
        if (!number.lookingAt() || COMMA.matcher(stripped).matches()) {
            throw notANumber(stripped, dimension.allowed());
        }
        String unitText = stripped.substring(number.end()).strip();
        if (unitText.isEmpty() && !dimension.isPureNumber()) {
            throw new QuantityException(Finding.of(ProblemKind.MISSING_UNIT, stripped, dimension.allowed()));
        }
        return new Quantity(stripped, dimension, value(number.group(), stripped, unitText, dimension));
    }

    private static double value(String number, String typed, String unitText, Dimension dimension)
            throws QuantityException {
        double plain = number(number);
        Unit unit = unit(number, typed, unitText, dimension);
        double value = plain == 0.0 ? 0.0 : unit.factor().times(new BigDecimal(number));
        if (!Double.isFinite(value)) {
            throw notANumber(typed, dimension.allowed());
        }
        return value;
    }

    private static Unit unit(String number, String typed, String unitText, Dimension dimension)
            throws QuantityException {
        try {
            return Unit.parse(unitText, dimension);
        } catch (QuantityException unitAlone) {
            Finding finding = unitAlone.finding();
            @Nullable String meant = finding.suggestion();
            throw new QuantityException(
                    new Finding(finding.kind(), typed, finding.allowed(), meant == null ? null : number + " " + meant));
        }
    }

    /**
     * Reads a number without a unit.
     *
     * @param text what was typed
     * @return the nearest double, finite
     * @throws QuantityException if the text is not a number
     */
    public static double number(String text) throws QuantityException {
        String stripped = text.strip();
        if (stripped.isEmpty()) {
            throw new QuantityException(Finding.of(ProblemKind.EMPTY_VALUE, "nothing", NUMBER_ALLOWED));
        }
        if (stripped.length() > LONGEST_NUMBER || !NUMBER.matcher(stripped).matches()) {
            throw notANumber(stripped, NUMBER_ALLOWED);
        }
        double number = Double.parseDouble(stripped);
        if (!Double.isFinite(number)) {
            throw notANumber(stripped, "a number below 1e308");
        }
        return number;
    }

    private static QuantityException notANumber(String text, String allowed) {
        if (COMMA.matcher(text).matches()) {
            return new QuantityException(new Finding(
                    ProblemKind.DECIMAL_COMMA,
                    text,
                    "a point before the decimals and no marks between thousands",
                    text.replaceFirst(",", ".")));
        }
        return new QuantityException(Finding.of(ProblemKind.NOT_A_NUMBER, text, allowed));
    }
}
