package org.headfall.solver.schedule;

/** A quantity that runs straight from each given value to the next and is level before the first and after the last. */
public final class LinearSchedule implements Schedule {

    private final TimedValues table;

    /**
     * Straight lines between values.
     *
     * @param days days of the values, strictly increasing
     * @param values value at each day
     * @throws IllegalArgumentException if the arrays differ in length, are empty, or the days do not increase
     */
    public LinearSchedule(double[] days, double[] values) {
        table = new TimedValues(days, values);
    }

    @Override
    public double at(double day) {
        int i = table.before(day);
        if (i < 0) {
            return table.value(0);
        }
        if (i == table.size() - 1) {
            return table.value(i);
        }
        double share = (day - table.day(i)) / (table.day(i + 1) - table.day(i));
        return table.value(i) + share * (table.value(i + 1) - table.value(i));
    }

    @Override
    public double[] jumps() {
        return new double[0];
    }

    @Override
    public double[] bends() {
        return table.days();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof LinearSchedule lines && table.equals(lines.table);
    }

    @Override
    public int hashCode() {
        return table.hashCode();
    }
}
