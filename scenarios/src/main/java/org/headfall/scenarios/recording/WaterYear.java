package org.headfall.scenarios.recording;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.List;

/**
 * A year of a water account, from the beginning of a day to the beginning of the same day a year later.
 *
 * @param begins first day
 * @param ends first day after it
 * @param fromDay the first as a day of the run (d since the start), negative before it
 * @param toDay end of the year as a day of the run, not included: where the next year begins
 */
public record WaterYear(LocalDate begins, LocalDate ends, double fromDay, double toDay) {

    private static WaterYear of(RunCalendar calendar, MonthDay first, int year) {
        LocalDate begins = first.atYear(year);
        LocalDate ends = first.atYear(year + 1);
        return new WaterYear(begins, ends, calendar.day(begins.atStartOfDay()), calendar.day(ends.atStartOfDay()));
    }

    /**
     * The water year that a day closes or lies in.
     *
     * @param calendar calendar of the run
     * @param first first day of each water year
     * @param day the day (d since the start)
     * @return the year with {@code fromDay < day <= toDay}: the beginning of a year closes the one before
     */
    public static WaterYear until(RunCalendar calendar, MonthDay first, double day) {
        LocalDateTime date = calendar.at(day);
        WaterYear year = of(calendar, first, date.getYear());
        while (year.fromDay() >= day) {
            year = of(calendar, first, year.begins().getYear() - 1);
        }
        while (year.toDay() < day) {
            year = of(calendar, first, year.begins().getYear() + 1);
        }
        return year;
    }

    /**
     * All water years that have a part in a run.
     *
     * @param calendar calendar of the run
     * @param first first day of each water year
     * @param startDay first day of the run
     * @param endDay its last day
     * @return the years in order; the first and the last may reach beyond the run
     */
    public static List<WaterYear> within(RunCalendar calendar, MonthDay first, double startDay, double endDay) {
        List<WaterYear> years = new ArrayList<>();
        WaterYear year = until(calendar, first, Math.nextUp(startDay));
        while (year.fromDay() < endDay) {
            years.add(year);
            year = of(calendar, first, year.begins().getYear() + 1);
        }
        return years;
    }

    /** Whether a run of some length holds all of it. */
    public boolean isWholeIn(double startDay, double endDay) {
        return fromDay >= startDay && toDay <= endDay;
    }
}
