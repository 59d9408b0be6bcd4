package org.headfall.solver.response;

/** Superposition cannot answer a run, for the reason that the message gives; stepping through time still can. */
public abstract sealed class SuperpositionException extends IllegalStateException
        permits EffectsAlikeException, ModesNotFoundException, TooManyStepsException {

    private static final long serialVersionUID = 1;

    /**
     * With a reason.
     *
     * @param reason the reason, a clause with its numbers
     */
    SuperpositionException(String reason) {
        super(reason);
    }
}
