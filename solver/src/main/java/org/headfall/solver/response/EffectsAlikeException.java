package org.headfall.solver.response;

/** Bores or springs that follow head do so much the same to each other that what each gives cannot be told apart. */
public final class EffectsAlikeException extends SuperpositionException {

    private static final long serialVersionUID = 1;

    /**
     * How many there are.
     *
     * @param following number of bores and springs that follow head
     */
    EffectsAlikeException(int following) {
        super("of " + following
                + " bores and springs that follow head some stand so that their effects cannot be told apart");
    }
}
