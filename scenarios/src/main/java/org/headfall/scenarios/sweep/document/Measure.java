package org.headfall.scenarios.sweep.document;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.QuantityException;
import org.headfall.scenarios.quantity.QuantityParser;
import org.jspecify.annotations.Nullable;

/**
 * A number and its unit as typed. What it measures is known only where a run reads it, and the unit is checked there.
 *
 * @param number the number
 * @param unit its unit as typed; empty for a pure number
 */
record Measure(double number, String unit) {

    private static final Pattern NUMBER_AND_UNIT = Pattern.compile("([-+.\\d]\\S*)(?:\\s+(.*))?");

    /** A value that runs get has no more digits than a reader can tell apart, and so the same text everywhere. */
    private static final MathContext DIGITS = new MathContext(7);

    private static final double LARGEST_WITHOUT_EXPONENT = 1e7;

    static Measure parse(String text) throws QuantityException {
        Matcher parts = NUMBER_AND_UNIT.matcher(text.strip());
        if (!parts.matches()) {
            throw new QuantityException(Finding.of(
                    ProblemKind.NOT_A_NUMBER, text, "a number with its unit after a space, such as 250 m2/d"));
        }
        @Nullable String unit = parts.group(2);
        return new Measure(QuantityParser.number(parts.group(1)), unit == null ? "" : unit.strip());
    }

    /** The measure of a number that was computed, rounded to seven digits. */
    static Measure rounded(double number, String unit) {
        return new Measure(new BigDecimal(number).round(DIGITS).doubleValue(), unit);
    }

    /** As it stands in a document. */
    String text() {
        boolean whole = number == Math.rint(number) && Math.abs(number) < LARGEST_WITHOUT_EXPONENT;
        String digits = whole ? Long.toString((long) number) : Double.toString(number);
        return unit.isEmpty() ? digits : digits + " " + unit;
    }
}
