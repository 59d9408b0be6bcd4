package org.headfall.solver.allocation;

import java.io.Serial;

/** That a solver ended without an optimum though nothing says that there is none; whoever has something to go on with may. */
public final class UnsolvedException extends IllegalStateException {

    @Serial
    private static final long serialVersionUID = 1;

    /**
     * A failure of the solver.
     *
     * @param message what was not solved, and how the solver ended
     */
    public UnsolvedException(String message) {
        super(message);
    }
}
