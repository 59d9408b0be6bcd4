package org.headfall.scenarios.report.content;

/** What a bore or spring does at a date. */
public enum SiteState {
    /** Gives what is asked of it. */
    RUNNING("runs as asked"),
    /** Flows by itself. */
    FLOWING("flows"),
    /** Would flow, but its head is below the outlet. */
    STOPPED("no longer flows"),
    /** Pumped, but less than asked because the water level reached its lowest allowed level. */
    CUT_BACK("cut back"),
    /** Takes nothing: shut, capped or not yet in use. */
    SHUT("shut"),
    /** Only watched. */
    WATCHED("watched");

    private final String words;

    SiteState(String words) {
        this.words = words;
    }

    /** The state in words. */
    public String words() {
        return words;
    }
}
