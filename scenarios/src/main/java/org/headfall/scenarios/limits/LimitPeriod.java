package org.headfall.scenarios.limits;

import java.util.Locale;
import java.util.OptionalDouble;
import org.headfall.scenarios.recording.RunCalendar;

/**
 * The part of a run in which a limit counts.
 *
 * @param fromDay first day (d since the start)
 * @param toDay last day (d since the start); absent for the end of the run
 * @param afterTakingStops whether it counts on after the run, when the taking of its cause has stopped
 */
public record LimitPeriod(double fromDay, OptionalDouble toDay, boolean afterTakingStops) {

    /** Years below which days are said. */
    private static final double SHORT = 0.95;

    /** At any time in the run. */
    public static final LimitPeriod EVER = new LimitPeriod(0, OptionalDouble.empty());

    /** At any time in the run, and after it when taking has stopped. */
    public static final LimitPeriod EVER_AND_AFTER_TAKING = new LimitPeriod(0, OptionalDouble.empty(), true);

    /** Checks the order. */
    public LimitPeriod {
        if (toDay.isPresent() && toDay.getAsDouble() < fromDay) {
            throw new IllegalArgumentException("a limit must not count from day " + fromDay + " to day "
                    + toDay.getAsDouble() + ", which is earlier");
        }
    }

    /**
     * A part of the run.
     *
     * @param fromDay first day (d since the start)
     * @param toDay last day (d since the start); absent for the end of the run
     */
    public LimitPeriod(double fromDay, OptionalDouble toDay) {
        this(fromDay, toDay, false);
    }

    /** Words for tables, such as "within 5 years". */
    public String words() {
        if (afterTakingStops) {
            return "at any time, also after taking stops";
        }
        if (toDay.isEmpty()) {
            return fromDay <= 0 ? "at any time in the run" : "after " + years(fromDay);
        }
        return fromDay <= 0
                ? "within " + years(toDay.getAsDouble())
                : "from " + years(fromDay) + " to " + years(toDay.getAsDouble());
    }

    private static String years(double day) {
        double years = day / RunCalendar.DAYS_PER_YEAR;
        if (years < SHORT) {
            long days = Math.round(day);
            return days + (days == 1 ? " day" : " days");
        }
        if (Math.abs(years - Math.rint(years)) < 0.004) {
            long whole = Math.round(years);
            return whole + (whole == 1 ? " year" : " years");
        }
        return String.format(Locale.ROOT, "%.1f years", years);
    }
}
