package org.headfall.scenarios.report;

import java.time.LocalDate;
import java.util.OptionalDouble;
import org.headfall.scenarios.recording.RunCalendar;
import org.jspecify.annotations.Nullable;

/**
 * Days of a run as dates.
 *
 * @param calendar its calendar
 */
record RunDates(RunCalendar calendar) {

    /** The date of a day since the start. */
    LocalDate on(double day) {
        return calendar.at(day).toLocalDate();
    }

    /** The date of a day since the start; null if there is none. */
    @Nullable
    LocalDate on(OptionalDouble day) {
        return day.isPresent() ? on(day.getAsDouble()) : null;
    }
}
