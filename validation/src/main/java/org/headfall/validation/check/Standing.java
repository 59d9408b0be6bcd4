package org.headfall.validation.check;

/** How a published number came into this project. */
public enum Standing {
    /** Read in the source itself. */
    READ("read in the source"),
    /** Read in another text that quotes the source. */
    QUOTED("read as quoted in another text"),
    /** From memory: to be checked against the source before it is cited. */
    MEMORY("from memory"),
    /** Computed outside the project, with general-purpose libraries or in extended precision. */
    RECOMPUTED("recomputed outside the project"),
    /** A property that follows from the equations; no number is published. */
    DERIVED("follows from the equations");

    private final String words;

    Standing(String words) {
        this.words = words;
    }

    /** The standing in words. */
    public String words() {
        return words;
    }
}
