package org.headfall.scenarios.limits;

import java.util.Locale;
import java.util.OptionalDouble;
import org.headfall.scenarios.recording.RunCalendar;

/**
 * The part of a run in which a limit counts.
 *
 * @param fromDay first day (d since the start)
 * @param toDay last day (d since the start); absent for the end of the run
 */
public record LimitPeriod(double fromDay, OptionalDouble toDay) {

    /** At any time in the run. */
    public static final LimitPeriod EVER = new LimitPeriod(0, OptionalDouble.empty());

    /** Checks the order. */
    public LimitPeriod {
        if (toDay.isPresent() && toDay.getAsDouble() < fromDay) {
            throw new IllegalArgumentException("a limit must not count from day " + fromDay + " to day "
                    + toDay.getAsDouble() + ", which is earlier");
        }
    }

    /** Words for tables, such as "within 5 years". */
    public String words() {
        if (toDay.isEmpty()) {
            return fromDay <= 0 ? "at any time in the run" : "after " + years(fromDay);
        }
        return fromDay <= 0
                ? "within " + years(toDay.getAsDouble())
                : "from " + years(fromDay) + " to " + years(toDay.getAsDouble());
    }

    private static String years(double day) {
        double years = day / RunCalendar.DAYS_PER_YEAR;
        if (Math.abs(years - Math.rint(years)) < 0.004) {
            long whole = Math.round(years);
            return whole + (whole == 1 ? " year" : " years");
        }
        return String.format(Locale.ROOT, "%.1f years", years);
    }
}
