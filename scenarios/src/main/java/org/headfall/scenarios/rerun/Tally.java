package org.headfall.scenarios.rerun;

import java.util.Optional;
import java.util.function.Supplier;

/** Counts the values of a file that were compared, and keeps the first difference. */
final class Tally {

    private long values;
    private long differing;
    private Optional<String> first = Optional.empty();

    /** Two values that have been found to be the same. */
    void same() {
        values++;
    }

    /** Compares two numbers; two that are no numbers are the same. */
    void numbers(double before, double now, Supplier<String> where) {
        values++;
        if (Double.compare(before, now) != 0) {
            differs(where.get(), words(before), words(now));
        }
    }

    /** Compares two texts. */
    void texts(String before, String now, Supplier<String> where) {
        values++;
        if (!before.equals(now)) {
            differs(where.get(), words(before), words(now));
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
        return new FileComparison(file, values, differing, first);
    }

    private static String words(double number) {
        return Double.isNaN(number) ? "no value" : Double.toString(number);
    }

    private static String words(String text) {
        return text.isEmpty() ? "nothing" : text;
    }
}
