package org.headfall.validation.check;

/** A case cannot be run on this computer: something outside the project is missing. */
public final class UnavailableException extends Exception {

    private static final long serialVersionUID = 1L;

    private final String reason;

    /**
     * Says what is missing.
     *
     * @param reason what is missing and how to get it
     */
    public UnavailableException(String reason) {
        super(reason);
        this.reason = reason;
    }

    /** What is missing and how to get it. */
    public String reason() {
        return reason;
    }
}
