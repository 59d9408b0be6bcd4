package org.headfall.solver.flow;

/** Nothing ties the heads of an aquifer down, so it has no steady state. */
public final class NoSteadyStateException extends IllegalStateException {

    private static final long serialVersionUID = 1L;

    /**
     * What the state would have to bear.
     *
     * @param asked discharges asked for, in words
     */
    NoSteadyStateException(String asked) {
        super("there is no steady state: every side of the aquifer, or of a part that stands alone, is closed or has a"
                + " given flow and nothing leaks; asked for are "
                + asked + "; give a boundary a head, or start from given heads");
    }
}
