package org.headfall.scenarios.reading;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.problem.Problems;
import org.headfall.scenarios.scenario.BoreCompletion;
import org.headfall.scenarios.scenario.BoreOperation;
import org.headfall.scenarios.scenario.BoreSpecification;
import org.headfall.scenarios.scenario.BoreSpecification.Levels;
import org.headfall.scenarios.scenario.BoreSpecification.Phase;
import org.headfall.solver.wording.PlainNumber;
import org.jspecify.annotations.Nullable;

/** A bore whose phases are still being gathered, with the place of its levels and of each phase. */
final class BoreDraft {
    private final BoreSpecification bore;
    private final Place levelPlace;
    private final List<Phase> phases = new ArrayList<>();

    BoreDraft(BoreSpecification bore, Place levelPlace) {
        this.bore = bore;
        this.levelPlace = levelPlace;
    }

    String name() {
        return bore.name();
    }

    /** Adds a phase, and reports it if it does not begin after the one before. */
    void add(Phase phase, Place place, Problems problems) {
        if (!phases.isEmpty()) {
            Optional<LocalDate> before = phases.get(phases.size() - 1).from();
            @Nullable LocalDate next = phase.from().orElse(null);
            if (next == null || (before.isPresent() && !next.isAfter(before.get()))) {
                String found = (next == null ? "no date" : next) + " after "
                        + before.map(LocalDate::toString).orElse("the start");
                problems.add(
                        place,
                        "bore " + bore.name(),
                        Finding.of(ProblemKind.DATE_ORDER, found, "each change later than the one before"));
                return;
            }
        }
        phases.add(phase);
    }

    /** The finished bore; reports levels that are missing for what it does or contradict each other. */
    BoreSpecification finish(Problems problems) {
        Levels levels = bore.levels();
        boolean flows = phases.stream().anyMatch(phase -> phase.operation() instanceof BoreOperation.FreeFlow);
        if (flows && levels.outlet().isEmpty()) {
            report(problems, ProblemKind.MISSING_KEY, "free flow without outlet_level", "outlet_level with free flow");
        }
        bore.completion().screen().ifPresent(screen -> requireScreenBelowGround(problems, screen));
        requireBelow(problems, "pump_intake_level", levels.pumpIntake(), "lowest_level", levels.lowest());
        requireBelow(problems, "pump_intake_level", levels.pumpIntake(), "ground_level", levels.ground());
        requireBelow(problems, "lowest_level", levels.lowest(), "ground_level", levels.ground());
        return new BoreSpecification(
                bore.name(),
                bore.position(),
                bore.holder(),
                bore.licence(),
                bore.group(),
                bore.screenRadius(),
                levels,
                bore.wellLoss(),
                bore.completion(),
                phases,
                bore.place());
    }

    private void requireScreenBelowGround(Problems problems, BoreCompletion.Screen screen) {
        OptionalDouble top = OptionalDouble.of(screen.top());
        requireBelow(problems, "screen.bottom", OptionalDouble.of(screen.bottom()), "screen.top", top);
        requireBelow(problems, "screen.top", top, "ground_level", bore.levels().ground());
    }

    private void requireBelow(Problems problems, String low, OptionalDouble below, String high, OptionalDouble above) {
        if (below.isPresent() && above.isPresent() && below.getAsDouble() > above.getAsDouble()) {
            String found = low + " " + PlainNumber.of(below.getAsDouble()) + " m above " + high + " "
                    + PlainNumber.of(above.getAsDouble()) + " m";
            report(
                    problems,
                    ProblemKind.OUT_OF_RANGE,
                    found,
                    low + " at or below " + high + " (levels above the datum)");
        }
    }

    private void report(Problems problems, ProblemKind kind, String found, String allowed) {
        problems.add(levelPlace, "bore " + bore.name(), Finding.of(kind, found, allowed));
    }
}
