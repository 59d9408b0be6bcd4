package org.headfall.scenarios.limits;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.StationSeries;

/**
 * A limited quantity over time, with its margin to the limit.
 *
 * @param days days since the start, increasing
 * @param values the quantity, in its unit
 * @param margins distance to the allowed value, negative beyond it
 * @param error numerical error of the values by the error of head that the series was made with
 */
@SuppressWarnings("ArrayRecordComponent") // a series inside one evaluation, never compared
record LimitSeries(double[] days, double[] values, double[] margins, double error) {

    /** Series of a quantity from head at a station, or from its difference to head in the run that it is compared with. */
    static LimitSeries of(
            LimitedQuantity quantity,
            RunCalendar calendar,
            StationSeries series,
            Optional<StationSeries> without,
            double headError) {
        // The difference of two computed heads can be wrong by both of their errors.
        double differenceError = without.isPresent() ? 2 * headError : headError;
        if (quantity instanceof LimitedQuantity.FloorLevel floor) {
            return floorLevel(series, floor.atLeast(), headError);
        }
        StationSeries change = without.map(other -> change(series, other)).orElse(series);
        if (quantity instanceof LimitedQuantity.DeclineRate rate) {
            return declineRate(change, calendar, rate, differenceError);
        }
        return drawdown(change, quantity.allowed(), differenceError);
    }

    private static LimitSeries floorLevel(StationSeries series, double atLeast, double error) {
        double[] head = series.head();
        double[] margins = new double[head.length];
        for (int i = 0; i < head.length; i++) {
            margins[i] = head[i] - atLeast;
        }
        return new LimitSeries(series.days(), head, margins, error);
    }

    private static LimitSeries drawdown(StationSeries series, double atMost, double error) {
        double[] head = series.head();
        double[] values = new double[head.length];
        for (int i = 0; i < head.length; i++) {
            values[i] = head[0] - head[i];
        }
        return new LimitSeries(series.days(), values, below(values, atMost), error);
    }

    /** Only days that lie far enough after the start for the whole mean. */
    private static LimitSeries declineRate(
            StationSeries series, RunCalendar calendar, LimitedQuantity.DeclineRate rate, double headError) {
        double[] days = series.days();
        double firstDay = calendar.yearsAfter(days[0], rate.overYears());
        int skipped = 0;
        while (skipped < days.length && days[skipped] < firstDay) {
            skipped++;
        }
        double[] laterDays = Arrays.copyOfRange(days, skipped, days.length);
        double[] values = new double[laterDays.length];
        for (int i = 0; i < values.length; i++) {
            double earlier = Math.max(days[0], calendar.yearsAfter(laterDays[i], -rate.overYears()));
            double years = (laterDays[i] - earlier) / RunCalendar.DAYS_PER_YEAR;
            values[i] = (series.headAt(earlier) - series.head()[skipped + i]) / years;
        }
        return new LimitSeries(laterDays, values, below(values, rate.atMost()), 2 * headError / rate.overYears());
    }

    private static double[] below(double[] values, double atMost) {
        double[] margins = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            margins[i] = atMost - values[i];
        }
        return margins;
    }

    /** Head less head without, as a series whose start is its own reference. */
    private static StationSeries change(StationSeries with, StationSeries without) {
        double[] difference = new double[with.days().length];
        for (int i = 0; i < difference.length; i++) {
            difference[i] = with.head()[i] - without.headAt(with.days()[i]);
        }
        return new StationSeries(with.days(), difference, with.levelInBore(), with.discharge(), with.wantedDischarge());
    }

    /** The part that counts, with records on its rims where they fall between two. */
    LimitSeries during(LimitPeriod period) {
        double from = period.fromDay();
        double to = period.toDay().orElse(Double.POSITIVE_INFINITY);
        double[] partDays = DoubleStream.concat(
                        Arrays.stream(days).filter(day -> day >= from && day <= to),
                        DoubleStream.of(from, to).filter(this::between))
                .sorted()
                .distinct()
                .toArray();
        return new LimitSeries(partDays, at(partDays, values), at(partDays, margins), error);
    }

    private boolean between(double day) {
        return days.length > 0 && day > days[0] && day < days[days.length - 1];
    }

    private double[] at(double[] someDays, double[] of) {
        return Arrays.stream(someDays)
                .map(day -> StationSeries.interpolate(days, of, day))
                .toArray();
    }

    /** Largest difference of the values to those of another series, which has the same days. */
    double largestDifference(LimitSeries other) {
        return IntStream.range(0, days.length)
                .mapToDouble(i -> Math.abs(values[i] - other.values[i]))
                .max()
                .orElse(0);
    }

    /** Record with the smallest margin. */
    int worst() {
        return IntStream.range(0, days.length)
                .reduce((a, b) -> margins[b] < margins[a] ? b : a)
                .orElseThrow();
    }
}
