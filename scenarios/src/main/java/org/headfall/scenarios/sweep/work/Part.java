package org.headfall.scenarios.sweep.work;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One of several parts of a sweep that are computed apart, each with a store of its own.
 *
 * @param number which part, from 1
 * @param of how many parts
 */
public record Part(int number, int of) {

    /** All runs. */
    public static final Part WHOLE = new Part(1, 1);

    private static final Pattern WORDS = Pattern.compile("(\\d{1,6})/(\\d{1,6})");

    /** Checks the numbers. */
    public Part {
        if (of < 1 || number < 1 || number > of) {
            throw new IllegalArgumentException(
                    "a part is a number from 1 to the number of parts, such as 3/40, found " + number + "/" + of);
        }
    }

    /**
     * Reads a part.
     *
     * @param text such as "3/40"
     * @return the part
     * @throws IllegalArgumentException if it is none
     */
    public static Part parse(String text) {
        Matcher matcher = WORDS.matcher(text);
        if (!matcher.matches()) {
            throw new IllegalArgumentException(
                    "a part is its number and the number of parts, such as 3/40, found " + text);
        }
        return new Part(Integer.parseInt(matcher.group(1)), Integer.parseInt(matcher.group(2)));
    }

    /** Whether a run belongs to it: neighbours go to different parts, so that all take about as long. */
    boolean has(int run) {
        return run % of == number % of;
    }

    /** Name of the store of this part. */
    String storeName() {
        return of == 1 ? "sweep.sqlite" : "sweep-part-" + number + "-of-" + of + ".sqlite";
    }

    @Override
    public String toString() {
        return number + "/" + of;
    }
}
