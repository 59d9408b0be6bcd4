package org.headfall.scenarios.limits;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Optional;
import java.util.OptionalDouble;
import org.headfall.scenarios.spatial.Position;

/** What a run says about a limit. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "is")
@JsonSubTypes({
    @JsonSubTypes.Type(value = Outcome.Holds.class, name = "holds"),
    @JsonSubTypes.Type(value = Outcome.Crossed.class, name = "crossed"),
    @JsonSubTypes.Type(value = Outcome.Undecided.class, name = "undecided"),
    @JsonSubTypes.Type(value = Outcome.NotEvaluated.class, name = "not evaluated")
})
public sealed interface Outcome {

    /** Which of the four it is. */
    enum Kind {
        /** Kept, by more than the numerical error. */
        HOLDS("holds"),
        /** Passed, by more than the numerical error. */
        CROSSED("crossed"),
        /** The margin is smaller than the numerical error, or the run ends too early to say. */
        UNDECIDED("undecided"),
        /** The run has no values for it. */
        NOT_EVALUATED("not evaluated");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /** One word or two for tables. */
        @JsonValue
        public String words() {
            return words;
        }
    }

    /** Which of the four it is. */
    Kind kind();

    /** One word or two for tables. */
    default String words() {
        return kind().words();
    }

    /**
     * The worst value of the time in which the limit counts.
     *
     * @param day its day (d since the start)
     * @param value its value, in the unit of the limit
     * @param margin distance to the allowed value in the allowed direction, negative beyond it
     * @param error numerical error of the value, in the same unit
     * @param note what else there is to say of it, such as where it is; empty for nothing
     * @param spot the middle of the cell where it is, of a limit on the map
     */
    record Worst(double day, double value, double margin, double error, String note, Optional<Position> spot) {
        /**
         * A worst value at a station.
         *
         * @param day its day (d since the start)
         * @param value its value, in the unit of the limit
         * @param margin distance to the allowed value in the allowed direction, negative beyond it
         * @param error numerical error of the value, in the same unit
         * @param note what else there is to say of it; empty for nothing
         */
        public Worst(double day, double value, double margin, double error, String note) {
            this(day, value, margin, error, note, Optional.empty());
        }

        /**
         * A worst value of which nothing else is to be said.
         *
         * @param day its day (d since the start)
         * @param value its value, in the unit of the limit
         * @param margin distance to the allowed value in the allowed direction, negative beyond it
         * @param error numerical error of the value, in the same unit
         */
        public Worst(double day, double value, double margin, double error) {
            this(day, value, margin, error, "");
        }
    }

    /** The worst value, if there are values. */
    default Optional<Worst> worstIfAny() {
        if (this instanceof Holds holds) {
            return Optional.of(holds.worst());
        }
        if (this instanceof Crossed crossed) {
            return Optional.of(crossed.worst());
        }
        return this instanceof Undecided undecided ? Optional.of(undecided.worst()) : Optional.empty();
    }

    /**
     * Kept at every recorded day, by more than the numerical error.
     *
     * @param worst nearest to the limit
     */
    record Holds(Worst worst) implements Outcome {
        @Override
        public Kind kind() {
            return Kind.HOLDS;
        }
    }

    /**
     * Passed by more than the numerical error.
     *
     * @param firstDay first day on which the value passes the limit, on the line between records (d since the start)
     * @param worst farthest beyond the limit
     */
    record Crossed(double firstDay, Worst worst) implements Outcome {
        @Override
        public Kind kind() {
            return Kind.CROSSED;
        }
    }

    /**
     * Neither can be said: the margin is smaller than the numerical error, or the run ends before the time in which
     * the limit counts is over.
     *
     * @param reason which of the two, as a sentence
     * @param firstDay first day on which the computed value passes the limit, if it does
     * @param worst nearest to, or farthest beyond, the limit
     */
    record Undecided(String reason, OptionalDouble firstDay, Worst worst) implements Outcome {
        @Override
        public Kind kind() {
            return Kind.UNDECIDED;
        }
    }

    /**
     * The run has no values for it.
     *
     * @param reason why, as a sentence
     */
    record NotEvaluated(String reason) implements Outcome {
        @Override
        public Kind kind() {
            return Kind.NOT_EVALUATED;
        }
    }
}
