package org.headfall.scenarios.problem;

import java.util.List;
import java.util.stream.Collectors;

/** The user's input cannot be used; carries every problem found. */
public final class InputException extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient List<Problem> problems;

    /**
     * Makes the exception; its message lists the problems one a line.
     *
     * @param problems what is wrong, in the order to be shown
     * @throws IllegalArgumentException if the list is empty
     */
    public InputException(List<Problem> problems) {
        super(problems.stream().map(Problem::toString).collect(Collectors.joining("\n")));
        if (problems.isEmpty()) {
            throw new IllegalArgumentException("an input exception needs at least one problem");
        }
        this.problems = List.copyOf(problems);
    }

    /** Every problem found, in the order to be shown. */
    public List<Problem> problems() {
        return problems;
    }
}
