package org.headfall.solver.schedule;

/** A quantity that holds each value until the next given day. Before the first day it is zero. Immutable. */
public final class StepSchedule implements Schedule {

    private final TimedValues table;

    /**
     * Steps.
     *
     * @param days days on which a value begins, strictly increasing
     * @param values value from each day on
     * @throws IllegalArgumentException if the arrays differ in length, are empty, or the days do not increase
     */
    public StepSchedule(double[] days, double[] values) {
        table = new TimedValues(days, values);
    }

    @Override
    public double at(double day) {
        int i = table.before(day);
        return i < 0 ? 0 : table.value(i);
    }

    @Override
    public double[] jumps() {
        return table.days();
    }

    @Override
    public double[] bends() {
        return new double[0];
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof StepSchedule steps && table.equals(steps.table);
    }

    @Override
    public int hashCode() {
        return table.hashCode();
    }
}
