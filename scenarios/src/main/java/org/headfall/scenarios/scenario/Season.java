package org.headfall.scenarios.scenario;

import java.time.LocalDate;
import java.time.MonthDay;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/**
 * Part of every year, both days included; it may reach over the end of the year.
 *
 * @param from first day
 * @param to last day
 */
public record Season(MonthDay from, MonthDay to) {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM", Locale.ENGLISH);

    /** Such as "1 October to 31 March". */
    public String words() {
        return DAY.format(from) + " to " + DAY.format(to);
    }

    /** Its first day in a year; 28 February where 29 February is asked of a common year. */
    public LocalDate begins(int year) {
        return from.atYear(year);
    }

    /** The first day after the season that begins in a year. */
    public LocalDate ends(int year) {
        return to.atYear(to.isBefore(from) ? year + 1 : year).plusDays(1);
    }

    /** Whether two seasons share a day of the year. */
    public boolean overlaps(Season other) {
        return has(other.from) || other.has(from);
    }

    /** Whether a day of the year is in the season. */
    public boolean has(MonthDay day) {
        boolean afterFrom = !day.isBefore(from);
        boolean beforeTo = !day.isAfter(to);
        return to.isBefore(from) ? afterFrom || beforeTo : afterFrom && beforeTo;
    }
}
