package org.headfall.scenarios.report.page;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/** Numbers, dates and lists as a reader expects them. */
final class Words {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);
    private static final String DASH = "\u2013";
    private static final String MINUS = "\u2212";

    private Words() {}

    static String date(LocalDate date) {
        return DAY.format(date);
    }

    /** A number with fixed decimals and a true minus sign, or a dash if it is not known. */
    static String number(double value, int decimals) {
        if (!Double.isFinite(value)) {
            return DASH;
        }
        String text = String.format(Locale.ROOT, "%,." + decimals + "f", Math.abs(value))
                .replace(",", "\u202f");
        boolean zero = text.chars().noneMatch(c -> c >= '1' && c <= '9');
        return value < 0 && !zero ? MINUS + text : text;
    }

    /** "one limit", "3 limits". */
    static String count(long number, String one, String many) {
        return number == 1 ? "one " + one : number + " " + many;
    }

    /** "A, B and C"; after the third name "and 4 more". */
    static String list(List<String> names) {
        return names.size() > 4
                ? String.join(", ", names.subList(0, 3)) + " and " + (names.size() - 3) + " more"
                : all(names);
    }

    /** "A, B, C, D and E". */
    static String all(List<String> names) {
        if (names.size() < 2) {
            return String.join("", names);
        }
        return String.join(", ", names.subList(0, names.size() - 1)) + " and " + names.get(names.size() - 1);
    }
}
