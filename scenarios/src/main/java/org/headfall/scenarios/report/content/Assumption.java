package org.headfall.scenarios.report.content;

/**
 * Something taken for granted, scored on four counts.
 *
 * @param statement what is assumed
 * @param data how far missing data forced it
 * @param resources how far missing time or means forced it
 * @param technical how far the method forced it
 * @param effect how much the answer depends on it
 */
public record Assumption(String statement, Score data, Score resources, Score technical, Score effect) {

    /** A score in words. */
    public enum Score {
        /** Little. */
        LOW,
        /** Some. */
        MEDIUM,
        /** Much. */
        HIGH
    }
}
