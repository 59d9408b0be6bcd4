package org.headfall.solver.response;

/** The iteration for eigenvalues or singular values, which modes of responses come from, has not settled. */
public final class ModesNotFoundException extends SuperpositionException {

    private static final long serialVersionUID = 1;

    /**
     * What was not found.
     *
     * @param values the values and whose they are, in the plural
     * @param rows rows of the matrix
     * @param columns its columns
     */
    ModesNotFoundException(String values, int rows, int columns) {
        super(values + " were not found, of a matrix of " + rows + " by " + columns);
    }
}
