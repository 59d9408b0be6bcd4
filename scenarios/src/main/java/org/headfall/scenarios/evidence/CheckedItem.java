package org.headfall.scenarios.evidence;

import com.fasterxml.jackson.annotation.JsonValue;

/**
 * An item that a reviewer of a model looks for.
 *
 * @param item what is looked for
 * @param source where that is asked for
 * @param state whether this run shows it
 * @param found what the run shows, with value and place, or what people have to look at
 */
public record CheckedItem(String item, String source, State state, String found) {

    /** Whether a run shows an item. */
    public enum State {
        /** The run's own data prove it. */
        SHOWN("shown"),
        /** The run's own data speak against it. */
        NOT_MET("not met"),
        /** The run could show it, but holds nothing on it. */
        NOT_SHOWN("not shown"),
        /** No run can prove it: people have to judge. */
        OPEN("open");

        private final String words;

        State(String words) {
            this.words = words;
        }

        /** The state in words. */
        @JsonValue
        public String words() {
            return words;
        }
    }

    static CheckedItem open(String item, String source, String hint) {
        return new CheckedItem(item, source, State.OPEN, hint);
    }
}
