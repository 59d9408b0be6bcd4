package org.headfall.scenarios.doubts;

/** A problem cannot be put on cells twice as wide. */
public final class WiderCellsException extends IllegalArgumentException {

    private static final long serialVersionUID = 1L;

    /** What does not fit, as the end of a sentence. */
    WiderCellsException(String message) {
        super(message);
    }
}
