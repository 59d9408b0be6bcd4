package org.headfall.scenarios.allocation;

/** The wanted total, the minimums of holders and the largest rate contradict each other, whatever limits give way. */
public final class ContradictionException extends RuntimeException {

    private static final long serialVersionUID = 1;

    ContradictionException() {
        super("the wanted total, the minimums of holders and the largest rate contradict each other");
    }
}
