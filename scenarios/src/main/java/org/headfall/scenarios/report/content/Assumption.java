package org.headfall.scenarios.report.content;

/**
 * Something taken for granted.
 *
 * @param statement what is assumed
 * @param here what this run shows of it
 * @param effect how much the answer depends on it
 */
public record Assumption(String statement, String here, Effect effect) {

    /** How much an answer depends on an assumption. */
    public enum Effect {
        /** Little. */
        LOW("low"),
        /** Some. */
        MEDIUM("medium"),
        /** Much. */
        HIGH("high");

        private final String words;

        Effect(String words) {
            this.words = words;
        }

        /** The effect in words. */
        public String words() {
            return words;
        }
    }
}
