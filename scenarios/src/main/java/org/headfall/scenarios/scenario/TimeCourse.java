package org.headfall.scenarios.scenario;

import java.time.LocalDate;
import java.util.List;

/** A quantity that may change with time, in metres and days. */
public sealed interface TimeCourse {
    /**
     * The same at all times.
     *
     * @param value the value
     */
    record Steady(double value) implements TimeCourse {}

    /**
     * Holds each value until the next date; zero before the first.
     *
     * @param values the values, their dates strictly increasing
     */
    record Steps(List<DatedValue> values) implements TimeCourse {
        /** Copies the list. */
        public Steps {
            values = List.copyOf(values);
        }
    }

    /**
     * Runs straight from each value to the next; level before the first and after the last.
     *
     * @param values the values, their dates strictly increasing
     */
    record Lines(List<DatedValue> values) implements TimeCourse {
        /** Copies the list. */
        public Lines {
            values = List.copyOf(values);
        }
    }

    /**
     * A value on a date.
     *
     * @param date the date, at its beginning
     * @param value the value
     */
    record DatedValue(LocalDate date, double value) {}
}
