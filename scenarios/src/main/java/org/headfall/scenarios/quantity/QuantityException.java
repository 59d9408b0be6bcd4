package org.headfall.scenarios.quantity;

import org.headfall.scenarios.problem.Finding;

/**
 * A text that is not a quantity of the wanted dimension. Carries no stack trace: it tells of the user's text, and a
 * table may hold millions of them.
 */
public final class QuantityException extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient Finding finding;

    /**
     * Makes the exception.
     *
     * @param finding what is wrong with the text
     */
    public QuantityException(Finding finding) {
        super(
                finding.kind().summary() + ": found " + finding.found() + "; allowed: " + finding.allowed(),
                null,
                false,
                false);
        this.finding = finding;
    }

    /** What is wrong with the text. */
    public Finding finding() {
        return finding;
    }
}
