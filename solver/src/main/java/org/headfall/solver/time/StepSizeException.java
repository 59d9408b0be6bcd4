package org.headfall.solver.time;

import org.headfall.solver.wording.PlainNumber;

/** The accuracy asked for needs shorter steps than allowed. */
public final class StepSizeException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    /** Day and step lengths (d) of the failure. */
    public StepSizeException(double day, double needed, double smallest) {
        super("at day " + PlainNumber.of(day) + " the time step would have to be " + PlainNumber.about(needed)
                + " d, below the smallest allowed " + PlainNumber.of(smallest)
                + " d: allow a larger error or check the values that jump at that day");
    }
}
