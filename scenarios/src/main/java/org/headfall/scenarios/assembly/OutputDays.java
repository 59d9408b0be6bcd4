package org.headfall.scenarios.assembly;

import java.time.LocalDate;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.headfall.scenarios.scenario.OutputSpecification;
import org.headfall.scenarios.scenario.OutputSpecification.Times;
import org.headfall.scenarios.scenario.Period;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;

/**
 * Days of the period on which something is written, in order; the first and the last day always among them.
 *
 * <p>Limits and the day on which a bore stops flowing are judged on the days of the stations. So those are every month
 * and every day on which a bore changes what it does, besides the ones asked for: records once a year would not see
 * what a season's pumping does between them.
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
     * @param bores the bores with what they do
     */
    public static OutputDays of(OutputSpecification output, Period period, List<Bore> bores) {
        double[] monthly = days(new OutputSpecification.Monthly(), period);
        double[] stations = Stream.of(
                        output.bores() instanceof OutputSpecification.Monthly ? monthly : days(output.bores(), period),
                        monthly,
                        changes(bores, period.days()))
                .flatMapToDouble(DoubleStream::of)
                .sorted()
                .distinct()
                .toArray();
        return new OutputDays(days(output.grids(), period), stations);
    }

    /** Days within the period on which a bore changes what it does. */
    private static double[] changes(List<Bore> bores, double end) {
        return bores.stream()
                .flatMap(bore -> bore.phases().stream())
                .mapToDouble(OperatingPhase::fromDay)
                .filter(day -> day > 0 && day < end)
                .toArray();
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
