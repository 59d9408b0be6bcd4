package org.headfall.solver.schedule;

/** A quantity that changes with time, known at every day of the simulated period. */
public sealed interface Schedule permits ConstantSchedule, StepSchedule, LinearSchedule, PiecewiseSchedule {

    /**
     * Value at a day; where the value jumps, the value after the jump.
     *
     * @param day days since the start of the period
     * @return the value, in the unit of the quantity
     */
    double at(double day);

    /** Days on which the value jumps, in increasing order: the time integrator starts anew there. */
    double[] jumps();

    /** Days on which the slope changes but not the value, in increasing order: the time integrator lands there. */
    double[] bends();

    /**
     * Schedule with one value for all time.
     *
     * @param value the value
     * @return the schedule
     */
    static Schedule constant(double value) {
        return new ConstantSchedule(value);
    }
}
