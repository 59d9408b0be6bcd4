package org.headfall.scenarios.limits;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.util.List;

/** With what a run is compared, and so whose taking a limit counts. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "is")
@JsonSubTypes({
    @JsonSubTypes.Type(value = Comparison.Nothing.class, name = "nothing"),
    @JsonSubTypes.Type(value = Comparison.Start.class, name = "start"),
    @JsonSubTypes.Type(value = Comparison.OnDay.class, name = "day"),
    @JsonSubTypes.Type(value = Comparison.MeanOfYears.class, name = "mean of years"),
    @JsonSubTypes.Type(value = Comparison.BeforeAnyTaking.class, name = "before any taking"),
    @JsonSubTypes.Type(value = Comparison.WithoutAnyBore.class, name = "without any bore"),
    @JsonSubTypes.Type(value = Comparison.WithoutProposedBores.class, name = "without proposed bores"),
    @JsonSubTypes.Type(value = Comparison.WithoutHolder.class, name = "without holder"),
    @JsonSubTypes.Type(value = Comparison.WithoutBores.class, name = "without bores"),
    @JsonSubTypes.Type(value = Comparison.WithCase.class, name = "case")
})
public sealed interface Comparison {

    /** With what, for tables. */
    String words();

    /** Whose taking is counted, for tables. */
    String cause();

    /** Whether that is another run than the one that is judged. */
    default boolean takesAnotherRun() {
        return true;
    }

    /** Nothing: the value itself is limited, whoever causes it. */
    record Nothing() implements Comparison {
        @Override
        public String words() {
            return "nothing";
        }

        @Override
        public String cause() {
            return "everyone";
        }

        @Override
        public boolean takesAnotherRun() {
            return false;
        }
    }

    /** The start of the run: the effect of everyone and everything since. */
    record Start() implements Comparison {
        @Override
        public String words() {
            return "the start of the run";
        }

        @Override
        public String cause() {
            return "everything since then";
        }

        @Override
        public boolean takesAnotherRun() {
            return false;
        }
    }

    /**
     * A day of the run: the effect of everyone and everything since.
     *
     * @param day the day (d since the start)
     * @param date its date, for tables
     */
    record OnDay(double day, String date) implements Comparison {
        @Override
        public String words() {
            return date;
        }

        @Override
        public String cause() {
            return "everything since then";
        }

        @Override
        public boolean takesAnotherRun() {
            return false;
        }
    }

    /**
     * Mean over some years of the run: the effect of everyone and everything since.
     *
     * @param fromDay first day (d since the start)
     * @param toDay last day (d since the start)
     * @param years the years, for tables: "2030 to 2034"
     */
    record MeanOfYears(double fromDay, double toDay, String years) implements Comparison {
        @Override
        public String words() {
            return "the mean of " + years;
        }

        @Override
        public String cause() {
            return "everything since then";
        }

        @Override
        public boolean takesAnotherRun() {
            return false;
        }
    }

    /** Heads that would not change without any bore: the effect of all taking that there ever was. */
    record BeforeAnyTaking() implements Comparison {
        @Override
        public String words() {
            return "the steady state before any taking";
        }

        @Override
        public String cause() {
            return "everyone, ever";
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

    /**
     * The same run from the same start without some bores: their effect alone.
     *
     * @param cause the bores in words
     * @param bores their names
     */
    record WithoutBores(String cause, List<String> bores) implements Comparison {
        /** Copies the list. */
        public WithoutBores {
            bores = List.copyOf(bores);
        }

        @Override
        public String words() {
            return "the same run without the " + cause;
        }
    }

    /**
     * Another case of the same document: the effect of what is different here.
     *
     * @param name its name
     */
    record WithCase(String name) implements Comparison {
        @Override
        public String words() {
            return "the case " + name;
        }

        @Override
        public String cause() {
            return "what differs from that case";
        }
    }
}
