package org.headfall.scenarios.reading;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.reading.TimeCourseReader.Shape;
import org.headfall.scenarios.scenario.BoreOperation;
import org.headfall.scenarios.scenario.BoreSpecification.Phase;
import org.headfall.scenarios.scenario.Season;
import org.headfall.scenarios.scenario.TimeCourse;
import org.jspecify.annotations.Nullable;

/** Reads what a bore of the document does, and the dated changes of it. */
final class OperationReader {
    private final Inputs inputs;
    private final TimeCourseReader courses;
    private final PumpReader pumps;

    OperationReader(Inputs inputs) {
        this.inputs = inputs;
        this.courses = new TimeCourseReader(inputs);
        this.pumps = new PumpReader(inputs);
    }

    /** A phase and where it is given. */
    record PlacedPhase(Phase phase, Place place) {}

    /** The phases of a bore in the order given; those with problems are left out. */
    List<PlacedPhase> phases(Section bore) {
        List<PlacedPhase> phases = new ArrayList<>();
        @Nullable LocalDate from = bore.optionalDate("from");
        addTo(phases, bore, from);
        for (Section change : inputs.sections(bore, "changes")) {
            @Nullable LocalDate date = change.date("from");
            if (date == null) {
                operation(change);
                SeasonWords.of(change, inputs.problems());
            } else {
                addTo(phases, change, date);
            }
            change.done();
        }
        return phases;
    }

    private void addTo(List<PlacedPhase> phases, Section section, @Nullable LocalDate from) {
        @Nullable BoreOperation operation = operation(section);
        Optional<Season> season = SeasonWords.of(section, inputs.problems());
        if (operation != null) {
            Place place = section.has("from") ? section.placeOf("from") : section.place();
            phases.add(new PlacedPhase(new Phase(Optional.ofNullable(from), operation, season), place));
        }
    }

    private @Nullable BoreOperation operation(Section section) {
        @Nullable String key = inputs.onlyOneOf(section, section.nameOf("rate"), "rate", "operation", "pump");
        if (key == null) {
            return null;
        }
        if (key.equals("operation")) {
            return section.choice("operation", BoreWords.OPERATIONS);
        }
        if (key.equals("pump")) {
            return pumps.read(section, "pump");
        }
        @Nullable
        TimeCourse rate = courses.required(section, "rate", Dimension.RATE, ValueRanges.RATE, Shape.STEPS, "rate");
        return rate == null ? null : new BoreOperation.Pumped(rate);
    }
}
