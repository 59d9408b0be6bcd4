package org.headfall.solver.schedule;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.headfall.solver.wording.PlainNumber;

/**
 * A quantity that runs straight within each of some stretches of time and may jump between them. Before the first stretch it
 * is zero; after the last it stays what it was at its end. Immutable.
 */
public final class PiecewiseSchedule implements Schedule {

    private final TimedValues begin;
    private final TimedValues end;
    private final double lastDay;

    /**
     * Straight pieces.
     *
     * @param days first day of each stretch, strictly increasing
     * @param begin value at the beginning of each stretch
     * @param end value at the end of each stretch, before any jump there
     * @param lastDay end of the last stretch, after its first day
     * @throws IllegalArgumentException if the arrays differ in length or are empty, the days do not increase, or a value is
     *     not finite
     */
    public PiecewiseSchedule(double[] days, double[] begin, double[] end, double lastDay) {
        this.begin = new TimedValues(days, begin);
        this.end = new TimedValues(days, end);
        this.lastDay = lastDay;
        if (!(lastDay > days[days.length - 1] && Double.isFinite(lastDay))) {
            throw new IllegalArgumentException("the last stretch must end after its first day "
                    + PlainNumber.of(days[days.length - 1]) + ", found day " + PlainNumber.of(lastDay));
        }
    }

    @Override
    public double at(double day) {
        int i = begin.before(day);
        if (i < 0) {
            return 0;
        }
        double until = i + 1 < begin.size() ? begin.day(i + 1) : lastDay;
        double share = Math.min(1, (day - begin.day(i)) / (until - begin.day(i)));
        return begin.value(i) + share * (end.value(i) - begin.value(i));
    }

    @Override
    public double[] jumps() {
        return days(true);
    }

    @Override
    public double[] bends() {
        return days(false);
    }

    private double[] days(boolean jumps) {
        return IntStream.range(0, begin.size())
                .filter(i -> jumps == (begin.value(i) != (i == 0 ? 0 : end.value(i - 1))))
                .mapToDouble(begin::day)
                .toArray();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PiecewiseSchedule pieces
                && begin.equals(pieces.begin)
                && end.equals(pieces.end)
                && lastDay == pieces.lastDay;
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(new int[] {begin.hashCode(), end.hashCode(), Double.hashCode(lastDay)});
    }
}
