package org.headfall.scenarios.findings;

import java.util.OptionalDouble;

/** When a series first passes a level, on straight lines between its records. */
public final class Crossing {

    private Crossing() {}

    /**
     * First day on which values fall below a level.
     *
     * @param days recorded days, increasing
     * @param values value at each day
     * @param level the level
     * @param from index of the first record looked at
     * @return the first record's day if it lies below already, else the day of the first downward crossing; absent if
     *     values never fall below the level
     */
    public static OptionalDouble below(double[] days, double[] values, double level, int from) {
        return first(days, values, level, from, -1);
    }

    /**
     * First day on which values rise above a level; otherwise as {@link #below}.
     *
     * @param days recorded days, increasing
     * @param values value at each day
     * @param level the level
     * @param from index of the first record looked at
     * @return day of the first record above, or of the first upward crossing, if any
     */
    public static OptionalDouble above(double[] days, double[] values, double level, int from) {
        return first(days, values, level, from, 1);
    }

    private static OptionalDouble first(double[] days, double[] values, double level, int from, int sign) {
        for (int i = from; i < days.length; i++) {
            double beyond = sign * (values[i] - level);
            if (beyond > 0) {
                return OptionalDouble.of(i == from ? days[i] : between(days, values, level, i));
            }
        }
        return OptionalDouble.empty();
    }

    /** Day on the line from record i - 1, not beyond the level, to record i, beyond it. */
    private static double between(double[] days, double[] values, double level, int i) {
        double share = (level - values[i - 1]) / (values[i] - values[i - 1]);
        return days[i - 1] + share * (days[i] - days[i - 1]);
    }
}
