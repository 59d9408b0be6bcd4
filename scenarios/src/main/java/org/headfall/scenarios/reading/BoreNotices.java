package org.headfall.scenarios.reading;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.headfall.scenarios.problem.Problems;
import org.headfall.scenarios.scenario.BoreOperation;
import org.headfall.scenarios.scenario.BoreSpecification;
import org.headfall.scenarios.scenario.BoreSpecification.Phase;
import org.headfall.scenarios.scenario.Period;
import org.headfall.scenarios.scenario.TimeCourse;

/** Says of bores what is allowed and may not be meant: changes that a run never comes to, and water that is put in. */
final class BoreNotices {
    private final Period period;
    private final Problems problems;

    BoreNotices(Period period, Problems problems) {
        this.period = period;
        this.problems = problems;
    }

    void of(List<BoreSpecification> bores) {
        bores.forEach(this::of);
    }

    private void of(BoreSpecification bore) {
        List<Phase> late = bore.phases().stream()
                .filter(phase -> begins(phase).filter(this::isLate).isPresent())
                .toList();
        if (!late.isEmpty()) {
            boolean all = late.size() == bore.phases().size();
            LocalDate from = begins(late.get(0)).orElseThrow();
            problems.notice(
                    bore.place(),
                    "bore " + bore.name() + " " + (all ? "begins on " : "changes on ") + from
                            + ", when the period is over (" + period.until() + "): "
                            + (all ? "no limit can show what it does" : "no limit can show that change"));
        }
        if (bore.phases().stream().anyMatch(BoreNotices::injects)) {
            problems.notice(
                    bore.place(),
                    "bore " + bore.name() + " has a negative rate, so that it puts water into the aquifer");
        }
    }

    private boolean isLate(LocalDate date) {
        return !date.isBefore(period.until());
    }

    /** Date of a phase; of a schedule, before whose first date nothing is pumped, at least that one. */
    private static Optional<LocalDate> begins(Phase phase) {
        if (phase.operation() instanceof BoreOperation.Pumped pumped
                && pumped.rate() instanceof TimeCourse.Steps steps
                && !steps.values().isEmpty()) {
            LocalDate first = steps.values().get(0).date();
            return Optional.of(phase.from().filter(from -> from.isAfter(first)).orElse(first));
        }
        return phase.from();
    }

    private static boolean injects(Phase phase) {
        if (!(phase.operation() instanceof BoreOperation.Pumped pumped)) {
            return false;
        }
        if (pumped.rate() instanceof TimeCourse.Steady steady) {
            return steady.value() < 0;
        }
        List<TimeCourse.DatedValue> values = pumped.rate() instanceof TimeCourse.Steps steps
                ? steps.values()
                : ((TimeCourse.Lines) pumped.rate()).values();
        return values.stream().anyMatch(value -> value.value() < 0);
    }
}
