package org.headfall.scenarios.limits;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;

/** With what a run is compared, and so whose taking a limit counts. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "is")
@JsonSubTypes({
    @JsonSubTypes.Type(value = Comparison.Start.class, name = "start"),
    @JsonSubTypes.Type(value = Comparison.WithoutAnyBore.class, name = "without any bore"),
    @JsonSubTypes.Type(value = Comparison.WithoutProposedBores.class, name = "without proposed bores"),
    @JsonSubTypes.Type(value = Comparison.WithoutHolder.class, name = "without holder")
})
public sealed interface Comparison {

    /** With what, for tables. */
    String words();

    /** Whose taking is counted, for tables. */
    String cause();

    /** Head at the start of the run: the effect of everyone and everything since. */
    record Start() implements Comparison {
        @Override
        public String words() {
            return "the start of the run";
        }

        @Override
        public String cause() {
            return "everything since then";
        }
    }

    /** The same run from the same start without any bore: the effect of everyone's taking after the start. */
    record WithoutAnyBore() implements Comparison {
        @Override
        public String words() {
            return "the same run without any bore";
        }

        @Override
        public String cause() {
            return "everyone";
        }
    }

    /** The same run from the same start without the proposed bores: their effect alone. */
    record WithoutProposedBores() implements Comparison {
        @Override
        public String words() {
            return "the same run without the proposed bores";
        }

        @Override
        public String cause() {
            return "proposed bores";
        }
    }

    /**
     * The same run from the same start without the bores of a holder: their effect alone.
     *
     * @param holder the holder
     */
    record WithoutHolder(String holder) implements Comparison {
        @Override
        public String words() {
            return "the same run without the bores of " + holder;
        }

        @Override
        public String cause() {
            return "bores of " + holder;
        }
    }
}
