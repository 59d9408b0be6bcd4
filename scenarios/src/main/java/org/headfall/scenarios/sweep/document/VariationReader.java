package org.headfall.scenarios.sweep.document;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.QuantityException;
import org.jspecify.annotations.Nullable;

/**
 * Reads which values a variable takes: {@code values: [...]}, {@code range: {from, to, step}}, or a distribution ({@code
 * uniform}, {@code normal}, {@code lognormal}, {@code triangular}), which {@code at_least} and {@code at_most} may cut, or
 * {@code random_field}.
 */
final class VariationReader {

    private static final List<String> WAYS =
            List.of("values", "range", "uniform", "normal", "lognormal", "triangular", "random_field");
    private static final int MOST_STEPS = 100_000;
    private static final double SHARE_OF_STEP = 1e-9;

    private final Section section;
    private final String name;
    private final String seed;

    /**
     * A reader.
     *
     * @param section the variable
     * @param name its name
     * @param seed seed of random fields that have none of their own
     */
    VariationReader(Section section, String name, String seed) {
        this.section = section;
        this.name = name;
        this.seed = seed;
    }

    /** The variation, or null after a problem has been reported. */
    @Nullable
    Variation read() {
        @Nullable String way = Entries.onlyOneOf(section, name, WAYS);
        if (way == null) {
            return null;
        }
        if (way.equals("values")) {
            return listed();
        }
        if (way.equals("random_field")) {
            return new NumberedFieldsReader(section, seed).read();
        }
        @Nullable Section given = section.section(way);
        if (given == null) {
            return null;
        }
        @Nullable Variation read = way.equals("range") ? range(given) : new DistributionReader(given, name).read(way);
        given.done();
        return read;
    }

    private @Nullable Variation listed() {
        List<DocumentNode> nodes = section.optionalList("values");
        if (nodes.isEmpty()) {
            section.refuse("values", Finding.of(ProblemKind.EMPTY_VALUE, "no value", "at least one value"));
            return null;
        }
        List<Optional<Measure>> measures =
                nodes.stream().map(VariationReader::measure).toList();
        boolean numeric = numeric(measures);
        List<Input> inputs = new ArrayList<>();
        for (int i = 0; i < nodes.size(); i++) {
            double number = numeric ? measures.get(i).orElseThrow().number() : i + 1;
            inputs.add(Input.of(nodes.get(i), number));
        }
        requireEachOnce(measures, inputs);
        return new Variation.Listed(inputs, false);
    }

    /** A value that is there twice would count twice in every share; numbers are the same however they are written. */
    private void requireEachOnce(List<Optional<Measure>> measures, List<Input> inputs) {
        Set<Object> seen = new HashSet<>();
        for (int i = 0; i < inputs.size(); i++) {
            Optional<Measure> measure = measures.get(i);
            Input input = inputs.get(i);
            if (!seen.add(measure.isPresent() ? measure.get() : input.text())) {
                section.values()
                        .problems()
                        .add(
                                input.value().place(),
                                section.nameOf("values"),
                                Finding.of(ProblemKind.DUPLICATE_NAME, input.text(), "each value once"));
            }
        }
    }

    private static boolean numeric(List<Optional<Measure>> measures) {
        return measures.stream().allMatch(Optional::isPresent)
                && measures.stream()
                                .map(measure -> measure.orElseThrow().unit())
                                .distinct()
                                .count()
                        == 1;
    }

    /** The unit that all listed values have in common; null if they are no numbers of one unit. */
    static @Nullable String unit(Variation variation) {
        if (variation instanceof Variation.Drawn drawn) {
            return drawn.unit();
        }
        if (variation instanceof Variation.DrawnFields) {
            return null;
        }
        List<Optional<Measure>> measures = ((Variation.Listed) variation)
                .inputs().stream().map(input -> measure(input.value())).toList();
        return numeric(measures) ? measures.get(0).orElseThrow().unit() : null;
    }

    private static Optional<Measure> measure(DocumentNode node) {
        try {
            return node instanceof DocumentNode.Scalar scalar
                    ? Optional.of(Measure.parse(scalar.text()))
                    : Optional.empty();
        } catch (QuantityException word) {
            return Optional.empty();
        }
    }

    private @Nullable Variation range(Section given) {
        @Nullable Measure from = Entries.measure(given, "from");
        @Nullable Measure to = Entries.measure(given, "to");
        @Nullable Measure step = Entries.measure(given, "step");
        if (from == null || to == null || step == null || !Entries.haveOneUnit(given, name, from, to, step)) {
            return null;
        }
        double steps = (to.number() - from.number()) / step.number();
        if (!(step.number() > 0)) {
            given.refuse(
                    "step", Finding.of(ProblemKind.OUT_OF_RANGE, String.valueOf(given.text("step")), "more than zero"));
        }
        if (!(from.number() <= to.number())) {
            given.refuse(
                    "to",
                    Finding.of(
                            ProblemKind.NO_ROWS,
                            String.valueOf(given.text("to")),
                            "at least from, " + given.text("from")));
        }
        if (!(step.number() > 0) || !(from.number() <= to.number())) {
            return null;
        }
        if (steps > MOST_STEPS) {
            String found = Math.round(steps) + " steps";
            refuse(given, Finding.of(ProblemKind.TOO_MANY_ROWS, found, "at most " + MOST_STEPS));
            return null;
        }
        List<Input> inputs = new ArrayList<>();
        for (int k = 0; k <= steps + SHARE_OF_STEP; k++) {
            inputs.add(
                    Input.of(Measure.rounded(from.number() + k * step.number(), from.unit()), given.placeOf("from")));
        }
        if (inputs.stream().map(Input::text).distinct().count() < inputs.size()) {
            String allowed = "a step that changes the first seven digits of " + to.text();
            given.refuse("step", Finding.of(ProblemKind.OUT_OF_RANGE, String.valueOf(given.text("step")), allowed));
            return null;
        }
        return new Variation.Listed(inputs, false);
    }

    private void refuse(Section given, Finding finding) {
        section.values().problems().add(given.place(), name, finding);
    }
}
