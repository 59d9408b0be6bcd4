package org.headfall.scenarios.sweep.document;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.document.ValueReader;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.sweep.figures.KeptFigure;
import org.jspecify.annotations.Nullable;

/** Reads the section {@code ask} against the kept figures. */
final class QuestionReader {

    private static final int MOST_AIMS = 3;
    private static final String REACHED_IN = "reached_in";
    private static final double PER_CENT = 100;
    private static final Map<String, Boolean> AIMS = Map.of("largest", true, "smallest", false);

    private final Section document;
    private final List<KeptFigure> figures;
    private final List<String> names;
    private final Set<String> refused;
    private final boolean repeatsSamples;

    /**
     * A reader.
     *
     * @param document the sweep document
     * @param figures what is kept
     * @param refused names of figures that could not be read; questions about them are passed over
     * @param repeatsSamples whether samples are repeated for choices
     */
    QuestionReader(Section document, List<KeptFigure> figures, Set<String> refused, boolean repeatsSamples) {
        this.repeatsSamples = repeatsSamples;
        this.refused = refused;
        this.document = document;
        this.figures = figures;
        names = figures.stream().map(KeptFigure::name).toList();
    }

    Questions read() {
        @Nullable Section ask = document.optionalSection("ask");
        if (ask == null) {
            return new Questions(Optional.empty(), List.of(), List.of(), List.of());
        }
        @Nullable Section ranking = ask.optionalSection("ranking");
        @Nullable Aim rankedBy = ranking == null ? null : aim(ranking);
        List<Aim> tradeOff = new ArrayList<>();
        List<Section> aims = Entries.sections(ask, "trade_off");
        for (Section section : aims) {
            @Nullable Aim aim = aim(section);
            if (aim != null
                    && tradeOff.stream().anyMatch(other -> other.figure().equals(aim.figure()))) {
                section.refuse("figure", Finding.of(ProblemKind.DUPLICATE_NAME, aim.figure(), "each figure once"));
            } else if (aim != null) {
                tradeOff.add(aim);
            }
        }
        if (aims.size() > MOST_AIMS || aims.size() == 1) {
            ask.refuse("trade_off", Finding.of(ProblemKind.OUT_OF_RANGE, aims.size() + " aims", "two or three aims"));
        }
        List<Threshold> thresholds = thresholds(ask);
        List<String> sensitivity = sensitivity(ask);
        ask.done();
        return new Questions(Optional.ofNullable(rankedBy), tradeOff, thresholds, sensitivity);
    }

    private @Nullable Aim aim(Section section) {
        @Nullable String figure = figure(section);
        @Nullable Boolean largest = section.choice("aim", AIMS);
        OptionalDouble reachedIn = section.has(REACHED_IN) ? reachedIn(section) : OptionalDouble.empty();
        section.done();
        return figure == null || largest == null ? null : new Aim(figure, largest, reachedIn);
    }

    private OptionalDouble reachedIn(Section section) {
        @Nullable Measure share = Entries.measure(section, REACHED_IN);
        if (share == null) {
            return OptionalDouble.empty();
        }
        if (!repeatsSamples) {
            section.refuse(
                    REACHED_IN,
                    Finding.of(
                            ProblemKind.CONFLICTING_KEYS, share.text(), "only with for_each_of, which names choices"));
        } else if (!share.unit().equals("%") || share.number() <= 0 || share.number() >= PER_CENT) {
            section.refuse(
                    REACHED_IN,
                    Finding.of(ProblemKind.OUT_OF_RANGE, share.text(), "more than 0 % and less than 100 %"));
        }
        return OptionalDouble.of(share.number() / PER_CENT);
    }

    private @Nullable String figure(Section section) {
        @Nullable String name = section.text("figure");
        if (name != null && !names.contains(name)) {
            if (!refused.contains(name)) {
                section.refuse("figure", notKept(name));
            }
            return null;
        }
        return name;
    }

    private Finding notKept(String name) {
        Finding choice = ValueReader.notAChoice(name, names);
        String allowed = names.isEmpty() ? "a figure under keep" : "a kept figure: " + choice.allowed();
        return new Finding(ProblemKind.UNKNOWN_NAME, choice.found(), allowed, choice.suggestion());
    }

    private List<Threshold> thresholds(Section ask) {
        List<Threshold> thresholds = new ArrayList<>();
        for (Section section : Entries.sections(ask, "probability")) {
            @Nullable String figure = figure(section);
            @Nullable String side = Entries.onlyOneOf(section, section.nameOf("figure"), List.of("above", "below"));
            @Nullable Measure bound = side == null ? null : Entries.measure(section, side);
            section.done();
            if (figure != null && bound != null && side != null && hasUnitOf(section, side, bound, figure)) {
                thresholds.add(new Threshold(figure, bound.number(), side.equals("above")));
            }
        }
        return thresholds;
    }

    private boolean hasUnitOf(Section section, String side, Measure bound, String name) {
        String unit = figures.stream()
                .filter(figure -> figure.name().equals(name))
                .findFirst()
                .orElseThrow()
                .unit();
        String first = unit.contains(" ") ? unit.substring(0, unit.indexOf(' ')) : unit;
        if (bound.unit().equals(first)) {
            return true;
        }
        section.refuse(side, Finding.of(ProblemKind.WRONG_UNIT, bound.text(), "the unit of the figure: " + first));
        return false;
    }

    private List<String> sensitivity(Section ask) {
        List<String> wanted = new ArrayList<>();
        for (String name : Entries.texts(ask, "sensitivity")) {
            if (wanted.contains(name)) {
                ask.refuse("sensitivity", Finding.of(ProblemKind.DUPLICATE_NAME, name, "each figure once"));
            } else if (names.contains(name)) {
                wanted.add(name);
            } else if (!refused.contains(name)) {
                ask.refuse("sensitivity", notKept(name));
            }
        }
        return wanted;
    }
}
