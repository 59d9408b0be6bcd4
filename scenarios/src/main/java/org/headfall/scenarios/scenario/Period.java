package org.headfall.scenarios.scenario;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;

/**
 * The simulated period, from the beginning of one day to the beginning of another, by the calendar.
 *
 * @param from first day
 * @param until first day after the period
 */
public record Period(LocalDate from, LocalDate until) {
    /** Length of a Julian year (d), the unit {@code yr}. */
    public static final double DAYS_PER_YEAR = 365.25;

    /**
     * Checks the order.
     *
     * @throws IllegalArgumentException if the period is empty
     */
    public Period {
        if (!from.isBefore(until)) {
            throw new IllegalArgumentException("a period ends after it begins, found " + from + " to " + until);
        }
    }

    /** Length of the period (d). */
    public double days() {
        return day(until);
    }

    /**
     * The beginning of a date as days since the start of the period; negative before it.
     *
     * @param date the date
     */
    public double day(LocalDate date) {
        return ChronoUnit.DAYS.between(from, date);
    }

    /**
     * The date on which a day of the period falls.
     *
     * @param day days since the start of the period
     */
    public LocalDate date(double day) {
        return from.plusDays((long) Math.floor(day));
    }

    /**
     * The date some time after the start of the period. A whole number of years goes by the calendar (50 yr after
     * 1 July 2026 is 1 July 2076); any other time is rounded to whole days.
     *
     * @param time time since the start of the period (d)
     */
    public LocalDate after(double time) {
        return later(from, time);
    }

    /**
     * The date some time after another, by the same rule as {@link #after}.
     *
     * @param date the earlier date
     * @param time time between the two (d)
     */
    public static LocalDate later(LocalDate date, double time) {
        double years = time / DAYS_PER_YEAR;
        return years == Math.rint(years) ? date.plusYears((long) years) : date.plusDays(Math.round(time));
    }
}
