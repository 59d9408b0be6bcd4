package org.headfall.scenarios.evidence;

import com.fasterxml.jackson.annotation.JsonValue;

/**
 * Something taken for granted, scored as in Bioregional Assessments (Australian Government, product 2.6.2 for the Galilee
 * subregion, section 2.6.2.8.2): would it have been assumed with more data, with more time and computing, with a better
 * technique; and how much the answer depends on it.
 *
 * @param statement what is assumed
 * @param here what this run shows of it
 * @param data how far a lack of data led to it
 * @param resources how far a lack of time, people or computing led to it
 * @param technical how far the means of the program led to it
 * @param effect how much the answer depends on it
 */
public record Assumption(String statement, String here, Score data, Score resources, Score technical, Score effect) {

    /** How far, or how much. */
    public enum Score {
        /** Little. */
        LOW("low"),
        /** Some. */
        MEDIUM("medium"),
        /** Much. */
        HIGH("high");

        private final String words;

        Score(String words) {
            this.words = words;
        }

        /** The score in words. */
        @JsonValue
        public String words() {
            return words;
        }
    }
}
