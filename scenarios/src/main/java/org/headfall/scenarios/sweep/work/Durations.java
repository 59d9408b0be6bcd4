package org.headfall.scenarios.sweep.work;

import java.util.Locale;

/** Lengths of time for people. */
final class Durations {

    private static final double MINUTE = 60;
    private static final double HOUR = 3600;
    private static final double LONG = 2;

    private Durations() {}

    static String words(double seconds) {
        if (seconds < LONG * MINUTE) {
            return String.format(Locale.ROOT, "%.0f s", seconds);
        }
        return seconds < LONG * HOUR
                ? String.format(Locale.ROOT, "%.0f min", seconds / MINUTE)
                : String.format(Locale.ROOT, "%.1f h", seconds / HOUR);
    }
}
