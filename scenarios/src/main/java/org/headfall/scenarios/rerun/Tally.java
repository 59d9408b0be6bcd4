package org.headfall.scenarios.rerun;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Counts the values of a file that were compared, and keeps the first difference. Numbers that differ by rounding alone, as
 * another processor, Java or build of the program makes them, are counted for themselves.
 */
final class Tally {

    /** Largest difference that passes for rounding, of the larger number or of one of its unit. */
    private static final double ROUNDING = 1e-9;

    /** Characters of a text that are shown: a document may be an attribute of a file. */
    private static final int LONGEST = 120;

    private long values;
    private long rounded;
    private long differing;
    private Optional<String> first = Optional.empty();

    /** Two values that have been found to be the same. */
    void same() {
        values++;
    }

    /** Compares two numbers; two that are no numbers are the same. */
    void numbers(double before, double now, Supplier<String> where) {
        values++;
        if (isRounding(before, now)) {
            rounded++;
        } else if (Double.compare(before, now) != 0) {
            differs(where.get(), words(before), words(now));
        }
    }

    /** Compares two texts, which may be numbers. */
    void texts(String before, String now, Supplier<String> where) {
        values++;
        if (!before.equals(now)) {
            if (isRounding(number(before), number(now))) {
                rounded++;
            } else {
                differs(where.get(), words(before, now), words(now, before));
            }
        }
    }

    private static boolean isRounding(double before, double now) {
        double difference = Math.abs(before - now);
        return difference > 0 && difference <= ROUNDING * Math.max(1, Math.max(Math.abs(before), Math.abs(now)));
    }

    private static double number(String text) {
        try {
            return Double.parseDouble(text);
        } catch (NumberFormatException word) {
            return Double.NaN;
        }
    }

    /** That a thing is another one, such as a count, a name or a length, besides the values. */
    void differs(String where, String before, String now) {
        differing++;
        if (first.isEmpty()) {
            first = Optional.of(where + ": " + before + " in the results, " + now + " now");
        }
    }

    FileComparison of(String file) {
        return new FileComparison(file, values, rounded, differing, first);
    }

    private static String words(double number) {
        return Double.isNaN(number) ? "no value" : Double.toString(number);
    }

    /** A text, of a long one the part where it begins to differ from another. */
    private static String words(String text, String other) {
        if (text.length() <= LONGEST) {
            return text.isEmpty() ? "nothing" : text;
        }
        int begin = Math.max(0, Arrays.mismatch(text.toCharArray(), other.toCharArray()) - LONGEST / 2);
        int end = Math.min(text.length(), begin + LONGEST);
        return (begin == 0 ? "" : "... ") + text.substring(begin, end) + (end == text.length() ? "" : " ...");
    }
}
