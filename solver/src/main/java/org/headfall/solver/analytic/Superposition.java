package org.headfall.solver.analytic;

import java.util.function.DoubleUnaryOperator;
import org.headfall.solver.schedule.StepSchedule;

/**
 * Superposition in time: what a cause that changes in steps adds up to, where the answer to a lasting unit cause is known.
 *
 * <p>Each change of the cause acts on its own from the moment it happens; a bore that stops is one that goes on pumping
 * and, from then on, is joined by another that puts the same rate back.
 */
public final class Superposition {
    private Superposition() {}

    /**
     * Sum over all steps begun before {@code time} of the change in value times the unit response to the time since.
     *
     * @param steps the cause, zero before its first step
     * @param time moment asked for (d)
     * @param unitResponse answer to a lasting cause of one as a function of the time since it began (d, positive)
     * @return the answer at that moment
     */
    public static double of(StepSchedule steps, double time, DoubleUnaryOperator unitResponse) {
        double sum = 0;
        double before = 0;
        for (double begin : steps.jumps()) {
            if (begin >= time) {
                break;
            }
            double value = steps.at(begin);
            sum += (value - before) * unitResponse.applyAsDouble(time - begin);
            before = value;
        }
        return sum;
    }
}
