package org.headfall.scenarios.assembly;

import java.time.LocalDate;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.headfall.scenarios.scenario.OutputSpecification;
import org.headfall.scenarios.scenario.OutputSpecification.Times;
import org.headfall.scenarios.scenario.Period;

/**
 * Days of the period on which something is written, in order; the first and the last day always among them.
 *
 * @param grids days on which heads of all cells are written
 * @param stations days on which bores, springs and protected points are written
 */
@SuppressWarnings("ArrayRecordComponent") // made once a run and never compared
public record OutputDays(double[] grids, double[] stations) {
    /**
     * The days of a scenario.
     *
     * @param output what is written
     * @param period the period
     */
    public static OutputDays of(OutputSpecification output, Period period) {
        return new OutputDays(days(output.grids(), period), days(output.bores(), period));
    }

    private static double[] days(Times times, Period period) {
        TreeSet<LocalDate> dates = new TreeSet<>(List.of(period.from(), period.until()));
        if (times instanceof OutputSpecification.On on) {
            dates.addAll(on.dates());
        } else if (times instanceof OutputSpecification.Monthly) {
            LocalDate first = period.from().withDayOfMonth(1).plusMonths(1);
            Stream.iterate(first, date -> date.isBefore(period.until()), date -> date.plusMonths(1))
                    .forEach(dates::add);
        } else {
            // counted from the start each time, so that 29 February returns in leap years
            for (int years = 1; period.from().plusYears(years).isBefore(period.until()); years++) {
                dates.add(period.from().plusYears(years));
            }
        }
        return dates.stream().mapToDouble(period::day).toArray();
    }
}
