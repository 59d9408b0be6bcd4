package org.headfall.validation.check;

/** The parts of the report. */
public enum Part {
    /** Closed forms against tables. */
    TABLES("Closed forms against published tables"),
    /** The simulator against closed forms. */
    SIMULATOR("The simulator against closed forms"),
    /** Worked examples and field data. */
    EXAMPLES("Worked examples and field data"),
    /** Properties that hold for any input. */
    PROPERTIES("Properties that must hold for any field"),
    /** Other programs. */
    INDEPENDENT("General-purpose libraries and rates of convergence");

    private final String title;

    Part(String title) {
        this.title = title;
    }

    /** Its heading. */
    public String title() {
        return title;
    }
}
