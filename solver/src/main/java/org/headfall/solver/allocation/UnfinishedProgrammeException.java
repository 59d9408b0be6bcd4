package org.headfall.solver.allocation;

/** The best values of a programme were not found in as many steps as are allowed, only others that keep all rows. */
public final class UnfinishedProgrammeException extends UnsolvedException {

    private static final long serialVersionUID = 1;

    UnfinishedProgrammeException() {
        super("the programme was not solved: values that keep all rows were found, but not the best of them");
    }
}
