package org.headfall.scenarios.scenario;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;

/**
 * How what is taken is accounted for.
 *
 * @param waterYearBegins first day of each water year
 * @param readings readings of meters, in order of the dates for each bore
 */
public record AccountsSpecification(MonthDay waterYearBegins, List<MeterReading> readings) {
    /** Copies the list. */
    public AccountsSpecification {
        readings = List.copyOf(readings);
    }

    /**
     * What the meter of a bore shows: all that has ever passed it.
     *
     * @param bore name of the bore
     * @param date the date, at its beginning
     * @param volume volume shown (m3)
     */
    public record MeterReading(String bore, LocalDate date, double volume) {}
}
