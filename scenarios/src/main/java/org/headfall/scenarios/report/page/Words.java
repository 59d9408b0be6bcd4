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

    /** A length in metres with as many decimals as it deserves. */
    static String metres(double value) {
        return number(value, lengthDecimals(value)) + "\u00a0m";
    }

    static int lengthDecimals(double value) {
        return Math.abs(value) >= 100 ? 1 : 2;
    }

    /** A value with its error, as "3.20 m ± 0.05 m", or with a remark that the error is not known. */
    static String withError(double value, double error, String unit) {
        String figure = number(value, lengthDecimals(value)) + "\u00a0" + unit;
        if (!Double.isFinite(error)) {
            return figure + " (numerical error not estimated)";
        }
        return error < 0.005
                ? figure + " (numerical error below 0.01\u00a0" + unit + ")"
                : figure + " \u00b1\u00a0" + number(error, 2) + "\u00a0" + unit;
    }

    /** "one limit", "3 limits". */
    static String count(long number, String one, String many) {
        return number == 1 ? "one " + one : number + " " + many;
    }

    /** "A, B and C"; after the third name "and 4 more". */
    static String list(List<String> names) {
        if (names.size() > 4) {
            return String.join(", ", names.subList(0, 3)) + " and " + (names.size() - 3) + " more";
        }
        if (names.size() < 2) {
            return String.join("", names);
        }
        return String.join(", ", names.subList(0, names.size() - 1)) + " and " + names.get(names.size() - 1);
    }
}
