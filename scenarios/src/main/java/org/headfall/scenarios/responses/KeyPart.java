package org.headfall.scenarios.responses;

/** One of the things that unit responses, or heads without bores and springs, depend on. */
public enum KeyPart {
    /** How responses are computed. */
    METHOD(Dependent.RESPONSES, "method"),
    /** Cells, and which of them belong to the aquifer. */
    GRID(Dependent.RESPONSES, "grid"),
    /** Transmissivity of the cells along both axes. */
    TRANSMISSIVITY(Dependent.RESPONSES, "transmissivity"),
    /** Storativity of the cells. */
    STORATIVITY(Dependent.RESPONSES, "storativity"),
    /** Thickness, conductivity and storage of the sealing bed. */
    SEALING_BED(Dependent.RESPONSES, "sealing bed"),
    /** Which boundaries there are, but for their heads and flows. */
    BOUNDARIES(Dependent.RESPONSES, "kinds and places of the boundaries"),
    /** The bores, but for what they do. */
    BORES(Dependent.RESPONSES, "names, places and radii of the bores"),
    /** The springs, but for outlets and conductances. */
    SPRINGS(Dependent.RESPONSES, "names and places of the springs"),
    /** Points to watch. */
    POINTS(Dependent.RESPONSES, "names and places of the protected points"),
    /** Where time begins. */
    FIRST_DAY(Dependent.UNDISTURBED_HEADS, "first day"),
    /** What the boundaries give over time. */
    BOUNDARY_LEVELS(Dependent.UNDISTURBED_HEADS, "heads and flows of the boundaries"),
    /** Recharge over time. */
    RECHARGE(Dependent.UNDISTURBED_HEADS, "recharge"),
    /** Head above the sealing bed. */
    LEVEL_ABOVE_BED(Dependent.UNDISTURBED_HEADS, "level above the sealing bed"),
    /** Given heads of the cells at the start. */
    HEADS_AT_START(Dependent.UNDISTURBED_HEADS, "heads at the start");

    /** What depends on a part. */
    public enum Dependent {
        /** Unit responses, and with them heads without bores and springs. */
        RESPONSES,
        /** Heads without bores and springs alone. */
        UNDISTURBED_HEADS
    }

    private final Dependent dependent;
    private final String words;

    KeyPart(Dependent dependent, String words) {
        this.dependent = dependent;
        this.words = words;
    }

    /** What depends on it. */
    public Dependent dependent() {
        return dependent;
    }

    /** What it is called in messages. */
    public String words() {
        return words;
    }
}
