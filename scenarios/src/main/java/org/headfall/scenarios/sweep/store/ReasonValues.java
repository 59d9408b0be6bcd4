package org.headfall.scenarios.sweep.store;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.headfall.scenarios.quantity.Unit;

/**
 * Tells the values in a reason, which differ from run to run, from numbers that belong to a name, such as that of Town 1. A
 * number counts as a value where that is sure: what is taken for a name parts reasons that could be one, what is taken for a
 * value would join those that are about different things.
 */
final class ReasonValues {

    /** A date, or a number that is no part of a word, such as the 2 of m2/d. */
    private static final Pattern NUMBER = Pattern.compile(
            "(?<![\\p{L}\\d_.])" + "(\\d{4}-\\d{2}-\\d{2}|[-+]?\\d[\\d,]*(\\.\\d+)?([eE][-+]?\\d+)?)(?![\\p{L}\\d_])");

    private static final Pattern WHOLE = Pattern.compile("\\d+");

    /** What stands before a number of lines, columns and things that are counted, and before values without a unit. */
    private static final Pattern INTRODUCED = Pattern.compile(
            "(:|\\b(found|allowed:|than|most|least|to|and|of|from|between|about|after|only|by|is|are|at) )$");

    private static final Pattern NEXT_WORD = Pattern.compile("^ ?([\\p{L}%°][\\p{L}\\d/^%²³]*)");

    private ReasonValues() {}

    /** The reason with a sign in place of each value. */
    static String without(String reason) {
        return NUMBER.matcher(reason)
                .replaceAll(number -> isValue(reason, number.group(), number.start(), number.end())
                        ? "#"
                        : Matcher.quoteReplacement(number.group()));
    }

    private static boolean isValue(String reason, String number, int start, int end) {
        if (!WHOLE.matcher(number).matches()
                || INTRODUCED.matcher(reason.substring(0, start)).find()) {
            return true;
        }
        Matcher next = NEXT_WORD.matcher(reason.substring(end));
        return next.find() && Unit.isUnit(next.group(1));
    }
}
