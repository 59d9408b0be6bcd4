package org.headfall.scenarios.reading;

import java.time.LocalDate;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.quantity.Quantity;
import org.headfall.scenarios.scenario.Period;
import org.jspecify.annotations.Nullable;

/** Reads the period: {@code {from: 2026-07-01, for: 50 yr}} or {@code {from: 2026-07-01, until: 2076-07-01}}. */
final class PeriodReader {
    private static final int LONGEST_YEARS = 1000;

    private final Inputs inputs;

    PeriodReader(Inputs inputs) {
        this.inputs = inputs;
    }

    @Nullable
    Period read(Section document) {
        @Nullable Section section = document.section("period");
        if (section == null) {
            return null;
        }
        @Nullable LocalDate from = section.date("from");
        @Nullable String end = inputs.onlyOneOf(section, "period", "for", "until");
        @Nullable LocalDate until = end == null ? null : until(section, from, end);
        section.done();
        return from == null || until == null ? null : period(section, from, until, end);
    }

    private static @Nullable LocalDate until(Section section, @Nullable LocalDate from, String end) {
        if (end.equals("until")) {
            return section.date("until");
        }
        @Nullable Quantity time = section.quantity("for", Dimension.TIME, ValueRanges.TIME);
        return time == null || from == null ? null : Period.later(from, time.value());
    }

    private static @Nullable Period period(Section section, LocalDate from, LocalDate until, @Nullable String key) {
        String named = key == null ? "until" : key;
        if (!from.isBefore(until)) {
            section.refuse(named, Finding.of(ProblemKind.DATE_ORDER, "an end on " + until, "a day after " + from));
            return null;
        }
        if (until.isAfter(from.plusYears(LONGEST_YEARS))) {
            section.refuse(
                    named,
                    Finding.of(ProblemKind.OUT_OF_RANGE, "an end on " + until, "at most " + LONGEST_YEARS + " yr"));
            return null;
        }
        return new Period(from, until);
    }
}
