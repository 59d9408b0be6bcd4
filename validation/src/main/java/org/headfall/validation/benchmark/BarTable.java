package org.headfall.validation.benchmark;

import java.io.PrintWriter;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** What was found for each {@link Bar}, and where in it the worst was found. */
final class BarTable {
    private record Finding(double figure, String where) {}

    private final Map<Bar, Finding> findings = new EnumMap<>(Bar.class);

    /** Takes down a figure; of several for the same bar the largest stays. */
    void add(Bar bar, double figure, String where) {
        findings.merge(bar, new Finding(figure, where), (before, now) -> now.figure() > before.figure() ? now : before);
    }

    /** Prints a row for every bar, those that were not measured included. */
    void print(PrintWriter out) {
        out.printf(Locale.ROOT, "| %-54s | %9s | %7s | %7s | %s%n", "what", "found", "bar", "aim", "bar met? |");
        out.printf(Locale.ROOT, "|---|---|---|---|---|%n");
        for (Bar bar : Bar.values()) {
            out.printf(
                    Locale.ROOT,
                    "| %-54s | %9s | %7s | %7s | %s |%n",
                    bar.what(),
                    found(bar),
                    plain(bar.most()),
                    Double.isNaN(bar.aim()) ? "" : plain(bar.aim()),
                    answer(bar, findings.get(bar)));
        }
        out.flush();
    }

    private String found(Bar bar) {
        Finding finding = findings.get(bar);
        return finding == null ? "" : String.format(Locale.ROOT, "%.4g", finding.figure());
    }

    private static String answer(Bar bar, @Nullable Finding finding) {
        if (finding == null) {
            return "not measured";
        }
        String where = finding.where().isEmpty() ? "" : ": " + finding.where();
        return (finding.figure() <= bar.most() ? "met" : "NOT MET") + where;
    }

    private static String plain(double value) {
        return value == Math.rint(value) ? String.valueOf((long) value) : String.format(Locale.ROOT, "%.2f", value);
    }
}
