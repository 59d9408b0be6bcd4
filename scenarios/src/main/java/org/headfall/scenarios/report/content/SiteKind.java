package org.headfall.scenarios.report.content;

/** What stands at a place of the map. */
public enum SiteKind {
    /** A bore with a pump. */
    PUMPED_BORE("pumped bore"),
    /** A bore that flows by itself, without a pump. */
    FREE_FLOWING_BORE("free-flowing bore"),
    /** A bore that takes nothing, to observe or held in reserve. */
    IDLE_BORE("idle bore"),
    /** A spring. */
    SPRING("spring"),
    /** A place that is only watched. */
    PROTECTED_POINT("protected point");

    private final String words;

    SiteKind(String words) {
        this.words = words;
    }

    /** The kind in words. */
    public String words() {
        return words;
    }
}
