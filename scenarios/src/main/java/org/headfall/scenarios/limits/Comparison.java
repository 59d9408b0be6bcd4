package org.headfall.scenarios.limits;

/** With what a run is compared, and so whose taking a limit counts. */
public enum Comparison {
    /** Head at the start of the run: the effect of everyone and everything since. */
    START("the start", "everyone"),
    /** The same run without the proposed bores: their effect alone. */
    WITHOUT_PROPOSED_BORES("the same run without the proposed bores", "proposed bores");

    private final String words;
    private final String cause;

    Comparison(String words, String cause) {
        this.words = words;
        this.cause = cause;
    }

    /** Words for tables. */
    public String words() {
        return words;
    }

    /** Whose taking is counted, for tables. */
    public String cause() {
        return cause;
    }
}
