package org.headfall.scenarios.reading;

import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.quantity.Quantity;
import org.headfall.scenarios.scenario.Period;
import org.jspecify.annotations.Nullable;

/** Reads how long new bores take. */
final class PlanningTimes {

    private PlanningTimes() {}

    /** Days of the key {@code for}: the whole period if nothing is said, at most that. */
    static double days(Section section, @Nullable Period period) {
        @Nullable Quantity time = section.optionalQuantity("for", Dimension.TIME, ValueRanges.TIME);
        if (period == null) {
            return 0;
        }
        if (time == null) {
            return period.days();
        }
        double days = period.day(period.after(time.value()));
        if (days > period.days() || days < 1) {
            section.refuse(
                    "for",
                    Finding.of(
                            ProblemKind.OUT_OF_RANGE,
                            time.text(),
                            "from 1 d to the whole period, which ends on " + period.until()));
        }
        return days;
    }
}
