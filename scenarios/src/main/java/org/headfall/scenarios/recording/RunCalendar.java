package org.headfall.scenarios.recording;

import java.time.Duration;
import java.time.LocalDateTime;

/**
 * The proleptic Gregorian calendar of a run, without time zones or leap seconds.
 *
 * @param start date and time of day 0
 */
public record RunCalendar(LocalDateTime start) {

    /** Length of a Julian year (d), the year of rates and of limits. */
    public static final double DAYS_PER_YEAR = 365.25;

    private static final double MILLISECONDS_PER_DAY = 86_400_000;

    /** Date and time at a day since the start, to the nearest millisecond. */
    public LocalDateTime at(double day) {
        return start.plus(Duration.ofMillis(Math.round(day * MILLISECONDS_PER_DAY)));
    }

    /** Days since the start at a date and time. */
    public double day(LocalDateTime date) {
        return Duration.between(start, date).toMillis() / MILLISECONDS_PER_DAY;
    }

    /** Day of the same calendar date a number of years later (earlier if negative). */
    public double yearsAfter(double day, long years) {
        return day(at(day).plusYears(years));
    }
}
