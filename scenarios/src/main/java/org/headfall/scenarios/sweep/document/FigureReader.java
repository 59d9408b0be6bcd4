package org.headfall.scenarios.sweep.document;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.document.ValueReader;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.AllowedRange;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.quantity.Quantity;
import org.headfall.scenarios.recording.ReportDate;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.scenario.Period;
import org.headfall.scenarios.sweep.figures.HeadOverTime;
import org.headfall.scenarios.sweep.figures.KeptFigure;
import org.headfall.scenarios.sweep.figures.LimitFigure;
import org.headfall.scenarios.sweep.figures.PlaceFigure;
import org.headfall.scenarios.sweep.figures.RunFigure;
import org.headfall.scenarios.sweep.figures.WorstFigure;
import org.jspecify.annotations.Nullable;

/** Reads the list {@code keep} against the places and report dates of the base scenario. */
final class FigureReader {

    private static final Map<String, PlaceFigure.Quantity> OF_PLACES = ofPlaces();
    private static final Map<String, RunFigure.Quantity> OF_RUNS = ofRuns();
    private static final Map<String, WorstFigure.Bores> OF_BORES = Arrays.stream(WorstFigure.Bores.values())
            .collect(Collectors.toMap(WorstFigure.Bores::words, bores -> bores));
    private static final double SAME_DAY = 1e-6;

    private final Section document;
    private final RunPlan base;
    private final Set<String> refused = new HashSet<>();

    FigureReader(Section document, RunPlan base) {
        this.document = document;
        this.base = base;
    }

    private static Map<String, PlaceFigure.Quantity> ofPlaces() {
        Map<String, PlaceFigure.Quantity> words = new TreeMap<>();
        Arrays.stream(PlaceFigure.Quantity.values()).forEach(quantity -> words.put(quantity.words(), quantity));
        return words;
    }

    private static Map<String, RunFigure.Quantity> ofRuns() {
        Map<String, RunFigure.Quantity> words = new TreeMap<>();
        Arrays.stream(RunFigure.Quantity.values()).forEach(quantity -> words.put(quantity.words(), quantity));
        return words;
    }

    /** What is asked for, then margin and first crossing of each limit. */
    List<KeptFigure> read() {
        List<KeptFigure> figures = new ArrayList<>();
        for (Section section : Entries.sections(document, "keep")) {
            List<KeptFigure> read = isOverTime(section) ? overTime(section) : listed(figure(section));
            section.done();
            for (KeptFigure figure : read) {
                if (figures.stream().anyMatch(other -> other.name().equals(figure.name()))) {
                    section.refuse("figure", Finding.of(ProblemKind.DUPLICATE_NAME, figure.name(), "each figure once"));
                    break;
                }
                figures.add(figure);
            }
        }
        for (Limit limit : base.limits()) {
            for (LimitFigure.Aspect aspect : LimitFigure.Aspect.values()) {
                figures.add(new LimitFigure(
                        limit.name(), limit.station(), limit.quantity().unit(), aspect));
            }
        }
        return figures;
    }

    private static List<KeptFigure> listed(@Nullable KeptFigure figure) {
        return figure == null ? List.of() : List.of(figure);
    }

    private static boolean isOverTime(Section section) {
        return section.optionalNode("figure") instanceof DocumentNode.Scalar word
                && word.text().strip().equals(HeadOverTime.WORDS);
    }

    private List<KeptFigure> overTime(Section section) {
        @Nullable String place = place(section);
        return place == null
                ? List.of()
                : HeadOverTime.of(place, base.description().endDay());
    }

    private @Nullable KeptFigure figure(Section section) {
        @Nullable String word = section.text("figure");
        if (word == null) {
            return null;
        }
        PlaceFigure.@Nullable Quantity ofPlace = OF_PLACES.get(word);
        RunFigure.@Nullable Quantity ofRun = OF_RUNS.get(word);
        if (ofPlace == null && ofRun == null) {
            List<String> choices = new ArrayList<>(OF_PLACES.keySet());
            choices.addAll(OF_RUNS.keySet());
            choices.add(HeadOverTime.WORDS);
            section.refuse("figure", ValueReader.notAChoice(word, choices));
            refused.add(name(section, word, section.has("at"), section.has("after")));
            return null;
        }
        if (ofPlace != null && section.has("of")) {
            return ofBores(section, ofPlace);
        }
        String name = name(section, word, ofPlace != null, isDated(ofPlace, ofRun));
        @Nullable String place = ofPlace == null ? "" : place(section);
        @Nullable Double day = isDated(ofPlace, ofRun) ? day(section) : Double.valueOf(0);
        if (place == null || day == null) {
            refused.add(name);
            return null;
        }
        if (ofPlace != null) {
            return new PlaceFigure(name, ofPlace, place, day);
        }
        return ofRun == null ? null : new RunFigure(name, ofRun, day);
    }

    /** The figure of the bore that is worst off. */
    private @Nullable KeptFigure ofBores(Section section, PlaceFigure.Quantity quantity) {
        WorstFigure.@Nullable Bores bores = section.choice("of", OF_BORES);
        @Nullable Double day = quantity.isDated() ? day(section) : Double.valueOf(0);
        if (section.has("at")) {
            section.refuse(
                    "at",
                    Finding.of(
                            ProblemKind.CONFLICTING_KEYS,
                            "the keys \"at\" and \"of\"",
                            "\"at\" for one place, or \"of\" for the worst off of several bores"));
        }
        if (bores == null || day == null) {
            refused.add(name(section, quantity.words(), section.has("at"), section.has("after")));
            return null;
        }
        String usual = WorstFigure.usualName(quantity, bores) + part(section, quantity.isDated(), "after");
        @Nullable String given = section.optionalText("name");
        return new WorstFigure(given == null ? usual : given, quantity, bores, day);
    }

    private static boolean isDated(PlaceFigure.@Nullable Quantity ofPlace, RunFigure.@Nullable Quantity ofRun) {
        return ofPlace == null ? ofRun != null && ofRun.isDated() : ofPlace.isDated();
    }

    /** The name that is given, or else what the figure is, in words. */
    private static String name(Section section, String word, boolean hasPlace, boolean isDated) {
        @Nullable String given = section.optionalText("name");
        return given == null ? word + part(section, hasPlace, "at") + part(section, isDated, "after") : given;
    }

    private static String part(Section section, boolean has, String key) {
        return has && section.optionalNode(key) instanceof DocumentNode.Scalar text
                ? " " + key + " " + text.text().strip()
                : "";
    }

    /** Names of figures that are not among those read, because of problems that have been reported. */
    Set<String> refused() {
        return refused;
    }

    private @Nullable String place(Section section) {
        @Nullable String place = section.text("at");
        List<String> places =
                base.description().stations().stream().map(Station::name).toList();
        if (place != null && !places.contains(place)) {
            section.refuse("at", unknownName(place, places));
            return null;
        }
        return place;
    }

    private static Finding unknownName(String name, List<String> names) {
        Finding choice = ValueReader.notAChoice(name, names);
        return new Finding(ProblemKind.UNKNOWN_NAME, choice.found(), choice.allowed(), choice.suggestion());
    }

    /** The report date some time after the start, counted as the scenario counts it. */
    private @Nullable Double day(Section section) {
        @Nullable Quantity after = section.quantity("after", Dimension.TIME, AllowedRange.POSITIVE);
        if (after == null) {
            return null;
        }
        RunDescription run = base.description();
        LocalDateTime start = run.calendar().start();
        double day = run.calendar()
                .day(Period.later(start.toLocalDate(), after.value()).atStartOfDay());
        for (ReportDate date : run.reportDates()) {
            if (Math.abs(date.day() - day) < SAME_DAY) {
                return date.day();
            }
        }
        List<String> labels = run.reportDates().stream().map(ReportDate::label).toList();
        section.refuse(
                "after",
                Finding.of(
                        ProblemKind.OUT_OF_RANGE,
                        after.text(),
                        "a time among report_after of the base document: " + String.join(", ", labels)));
        return null;
    }
}
