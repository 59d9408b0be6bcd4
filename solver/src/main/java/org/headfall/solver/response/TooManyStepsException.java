package org.headfall.solver.response;

import org.headfall.solver.wording.PlainNumber;

/** Discharges change so often that superposition would take more steps than are worth it. */
public final class TooManyStepsException extends SuperpositionException {

    private static final long serialVersionUID = 1;

    /**
     * Where the steps end.
     *
     * @param steps how many there have been
     * @param day day that they reach (d)
     */
    TooManyStepsException(int steps, double day) {
        super("discharges change so often that " + steps + " steps reach day " + PlainNumber.about(day) + " only");
    }
}
