package org.headfall.solver.time;

/** The accuracy asked for needs shorter steps than allowed. */
public final class StepSizeException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    /** Day and step lengths (d) of the failure. */
    public StepSizeException(double day, double needed, double smallest) {
        super("at day " + day + " the time step would have to be " + needed + " d, below the smallest allowed "
                + smallest + " d: allow a larger error or check the values that jump at that day");
    }
}
