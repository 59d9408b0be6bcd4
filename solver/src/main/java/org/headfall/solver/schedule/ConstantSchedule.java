package org.headfall.solver.schedule;

import org.headfall.solver.wording.PlainNumber;

/**
 * One value for all time.
 *
 * @param value the value, finite
 */
public record ConstantSchedule(double value) implements Schedule {

    /** Checks the value. */
    public ConstantSchedule {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("value must be finite, found " + PlainNumber.of(value));
        }
    }

    @Override
    public double at(double day) {
        return value;
    }

    @Override
    public double[] jumps() {
        return new double[0];
    }

    @Override
    public double[] bends() {
        return new double[0];
    }
}
