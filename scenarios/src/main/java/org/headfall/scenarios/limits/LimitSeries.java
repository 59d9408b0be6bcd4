package org.headfall.scenarios.limits;

import java.util.Arrays;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
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

    /** A series of a quantity. */
    static LimitSeries of(LimitedQuantity quantity, double[] days, double[] values, double error) {
        double[] margins = Arrays.stream(values).map(quantity::margin).toArray();
        return new LimitSeries(days, values, margins, error);
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

    /** All but the first record, which there must be. */
    LimitSeries withoutFirst() {
        return new LimitSeries(
                Arrays.copyOfRange(days, 1, days.length),
                Arrays.copyOfRange(values, 1, values.length),
                Arrays.copyOfRange(margins, 1, margins.length),
                error);
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
