package org.headfall.scenarios.limits;

import java.util.Optional;
import java.util.function.Function;
import org.headfall.scenarios.recording.StationSeries;

/** What the values of a series are measured from: its own value on a day, its own mean, or those of another run. */
final class ReferenceValues {

    private final double[] days;
    private final double[] values;
    private final Comparison comparison;
    private final Optional<StationSeries> other;
    private final Function<StationSeries, double[]> of;

    /**
     * Reference of a series.
     *
     * @param run the series
     * @param other that of the run it is compared with, if that is another one
     * @param comparison with what it is compared
     * @param of the values of a series: heads or discharges
     */
    ReferenceValues(
            StationSeries run,
            Optional<StationSeries> other,
            Comparison comparison,
            Function<StationSeries, double[]> of) {
        this.days = run.days();
        this.values = of.apply(run);
        this.other = other;
        this.comparison = comparison;
        this.of = of;
    }

    /** Value that the value of a record is measured from. */
    double at(int record) {
        return onDay(days[record]);
    }

    /** Value that the value on a recorded day or between two is measured from. */
    double onDay(double day) {
        if (other.isPresent()) {
            return StationSeries.interpolate(other.get().days(), of.apply(other.get()), day);
        }
        if (comparison instanceof Comparison.OnDay on) {
            return StationSeries.interpolate(days, values, on.day());
        }
        return comparison instanceof Comparison.MeanOfYears mean ? mean(mean.fromDay(), mean.toDay()) : values[0];
    }

    /** First record that counts: earlier ones lie before what they would be measured from. */
    int firstRecord() {
        double first = Double.NEGATIVE_INFINITY;
        if (comparison instanceof Comparison.OnDay on) {
            first = on.day();
        } else if (comparison instanceof Comparison.MeanOfYears mean) {
            first = mean.toDay();
        }
        int record = 0;
        while (record < days.length && days[record] < first) {
            record++;
        }
        return record;
    }

    /** How many errors of a computed value the difference to the reference may hold; the start is known. */
    int errors() {
        boolean known = comparison instanceof Comparison.Start
                || comparison instanceof Comparison.BeforeAnyTaking
                || comparison instanceof Comparison.Nothing;
        return known ? 1 : 2;
    }

    /** Mean over time of the straight lines between the records. */
    private double mean(double from, double to) {
        double area = 0;
        double formerDay = from;
        double former = StationSeries.interpolate(days, values, from);
        for (int i = 0; i < days.length; i++) {
            if (days[i] > from && days[i] < to) {
                area += (former + values[i]) / 2 * (days[i] - formerDay);
                formerDay = days[i];
                former = values[i];
            }
        }
        area += (former + StationSeries.interpolate(days, values, to)) / 2 * (to - formerDay);
        return area / (to - from);
    }
}
