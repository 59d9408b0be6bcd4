package org.headfall.solver.schedule;

import java.util.Arrays;
import org.headfall.solver.wording.PlainNumber;

/** Days in strictly increasing order, each with a finite value: the table behind the schedules that change. */
final class TimedValues {

    private final double[] days;
    private final double[] values;

    TimedValues(double[] days, double[] values) {
        if (days.length == 0 || days.length != values.length) {
            throw new IllegalArgumentException(
                    "need as many values as days and at least one, found " + days.length + " and " + values.length);
        }
        for (int i = 0; i < days.length; i++) {
            if (!Double.isFinite(days[i]) || !Double.isFinite(values[i]) || (i > 0 && days[i] <= days[i - 1])) {
                throw new IllegalArgumentException("days must increase and values be finite: entry " + i + " is day "
                        + PlainNumber.of(days[i]) + ", value " + PlainNumber.of(values[i]));
            }
        }
        this.days = days.clone();
        this.values = values.clone();
    }

    /** Index of the last day at or before the given one, -1 before the first. */
    int before(double day) {
        int found = Arrays.binarySearch(days, day);
        return found >= 0 ? found : -found - 2;
    }

    int size() {
        return days.length;
    }

    double day(int i) {
        return days[i];
    }

    double value(int i) {
        return values[i];
    }

    double[] days() {
        return days.clone();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof TimedValues table
                && Arrays.equals(days, table.days)
                && Arrays.equals(values, table.values);
    }

    @Override
    public int hashCode() {
        return 31 * Arrays.hashCode(days) + Arrays.hashCode(values);
    }
}
