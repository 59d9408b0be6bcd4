package org.headfall.cli.answer;

import java.util.Locale;

/**
 * Numbers with so many decimals.
 *
 * @param count how many
 */
record Decimals(int count) {

    private static final int FEWEST = 2;
    private static final int MOST = 4;

    /** A number with two decimals. */
    static String two(double value) {
        return new Decimals(FEWEST).of(value);
    }

    /** As many decimals as it takes to show that a value is not the allowed one, from two to four. */
    static Decimals tellingApart(double value, double allowed) {
        Decimals decimals = new Decimals(FEWEST);
        while (decimals.count < MOST && value != allowed && decimals.of(value).equals(decimals.of(allowed))) {
            decimals = new Decimals(decimals.count + 1);
        }
        return decimals;
    }

    /** A number; a minus sign before nothing but zeros is left out. */
    String of(double value) {
        String text = String.format(Locale.ROOT, "%." + count + "f", value);
        return text.matches("-0\\.0+") ? text.substring(1) : text;
    }
}
