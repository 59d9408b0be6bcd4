package org.headfall.scenarios.reading;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.AllowedRange;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.quantity.Quantity;
import org.headfall.scenarios.scenario.OutputSpecification;
import org.headfall.scenarios.scenario.OutputSpecification.Times;
import org.headfall.scenarios.scenario.Period;
import org.headfall.scenarios.scenario.Solving;
import org.jspecify.annotations.Nullable;

/**
 * Reads what is written: {@code {grids: yearly, bores: monthly, report_after: [1 yr, 5 yr], head_tolerance: 1 mm,
 * longest_step: 30 d, solve: automatic}}.
 * Everything may be left out.
 */
final class OutputReader {
    static final Map<String, Times> TIMES = new TreeMap<>(
            Map.of("monthly", new OutputSpecification.Monthly(), "yearly", new OutputSpecification.Yearly()));

    private static final Map<String, Solving> SOLVING = new TreeMap<>(Map.of(
            "automatic", Solving.AUTOMATIC,
            "by superposition", Solving.BY_SUPERPOSITION,
            "by steps", Solving.BY_STEPS));

    private static final List<Integer> USUAL_REPORT_YEARS = List.of(1, 5, 10, 20, 50);
    private static final AllowedRange TOLERANCE = new AllowedRange(1e-6, true, 1, true);

    /** Longest step (d), from a minute on: a bound below that would make runs endless. */
    private static final AllowedRange LONGEST_STEP = AllowedRange.between(1.0 / 1440, 365_250);

    private final Inputs inputs;
    private final @Nullable Period period;

    OutputReader(Inputs inputs, @Nullable Period period) {
        this.inputs = inputs;
        this.period = period;
    }

    OutputSpecification read(Section document) {
        @Nullable Section section = document.optionalSection("output");
        if (section == null) {
            return new OutputSpecification(
                    new OutputSpecification.Yearly(),
                    new OutputSpecification.Monthly(),
                    usualDates(),
                    OutputSpecification.USUAL_HEAD_TOLERANCE,
                    Double.POSITIVE_INFINITY,
                    Solving.AUTOMATIC);
        }
        Times grids = times(section, "grids", new OutputSpecification.Yearly());
        Times bores = times(section, "bores", new OutputSpecification.Monthly());
        List<LocalDate> report = section.has("report_after") ? reportDates(section) : usualDates();
        @Nullable Quantity tolerance = section.optionalQuantity("head_tolerance", Dimension.LENGTH, TOLERANCE);
        @Nullable Quantity longest = section.optionalQuantity("longest_step", Dimension.TIME, LONGEST_STEP);
        @Nullable Solving solving = section.has("solve") ? section.choice("solve", SOLVING) : Solving.AUTOMATIC;
        if (section.has("longest_step") && solving == Solving.BY_SUPERPOSITION) {
            section.refuse(
                    "longest_step",
                    Finding.of(
                            ProblemKind.CONFLICTING_KEYS,
                            "longest_step and solve: by superposition, which takes no steps through time",
                            "one of them"));
        }
        section.done();
        return new OutputSpecification(
                grids,
                bores,
                report,
                tolerance == null ? OutputSpecification.USUAL_HEAD_TOLERANCE : tolerance.value(),
                longest == null ? Double.POSITIVE_INFINITY : longest.value(),
                // Whoever bounds the steps wants steps.
                longest != null ? Solving.BY_STEPS : solving == null ? Solving.AUTOMATIC : solving);
    }

    private Times times(Section section, String key, Times usual) {
        if (!section.has(key)) {
            return usual;
        }
        if (!(section.optionalNode(key) instanceof DocumentNode.Listing listing)) {
            @Nullable Times times = section.choice(key, TIMES);
            return times == null ? usual : times;
        }
        TreeSet<LocalDate> dates = new TreeSet<>();
        for (DocumentNode node : listing.entries()) {
            @Nullable LocalDate date = section.values().date(node, section.nameOf(key));
            if (date != null && isWithin(section, node, key, date, date.toString())) {
                dates.add(date);
            }
        }
        return new OutputSpecification.On(List.copyOf(dates));
    }

    private boolean isWithin(Section section, DocumentNode node, String key, LocalDate date, String found) {
        if (period == null || (!date.isBefore(period.from()) && !date.isAfter(period.until()))) {
            return true;
        }
        String allowed = "dates from " + period.from() + " to " + period.until();
        section.values().refuse(node, section.nameOf(key), Finding.of(ProblemKind.OUT_OF_RANGE, found, allowed));
        return false;
    }

    private List<LocalDate> usualDates() {
        TreeSet<LocalDate> dates = new TreeSet<>();
        if (period != null) {
            USUAL_REPORT_YEARS.forEach(years -> dates.add(period.from().plusYears(years)));
            dates.removeIf(date -> date.isAfter(period.until()));
            dates.add(period.until());
        }
        return new ArrayList<>(dates);
    }

    private List<LocalDate> reportDates(Section section) {
        TreeSet<LocalDate> dates = new TreeSet<>();
        for (DocumentNode node : section.optionalList("report_after")) {
            @Nullable
            Quantity time =
                    section.values().quantity(node, section.nameOf("report_after"), Dimension.TIME, ValueRanges.TIME);
            if (time != null && period != null) {
                LocalDate date = period.after(time.value());
                if (isWithin(section, node, "report_after", date, time.text() + ", which is " + date)) {
                    dates.add(date);
                }
            }
        }
        if (dates.isEmpty() && inputs.problems().isEmpty()) {
            section.refuse(
                    "report_after", Finding.of(ProblemKind.EMPTY_VALUE, "no time", "a list such as [1 yr, 10 yr]"));
        }
        return new ArrayList<>(dates);
    }
}
