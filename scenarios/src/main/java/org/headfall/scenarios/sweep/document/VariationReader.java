package org.headfall.scenarios.sweep.document;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.headfall.scenarios.document.DocumentNode;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.QuantityException;
import org.headfall.scenarios.sweep.sampling.Distribution;
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

    /** A distribution before it is cut, with the unit of its parameters. */
    private record Parameters(Distribution distribution, String unit, Place place) {}

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
        @Nullable Variation read = way.equals("range") ? range(given) : drawn(given, way);
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
        return new Variation.Listed(inputs, false);
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
        if (from == null || to == null || step == null || !haveOneUnit(given, from, to, step)) {
            return null;
        }
        double steps = (to.number() - from.number()) / step.number();
        if (!(step.number() > 0) || !(steps >= 0)) {
            String found = from.text() + " to " + to.text() + " by " + step.text();
            refuse(given, Finding.of(ProblemKind.NO_ROWS, found, "from at most to, and a step of more than zero"));
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
        return new Variation.Listed(inputs, false);
    }

    private @Nullable Variation drawn(Section given, String way) {
        try {
            @Nullable Parameters parameters = parameters(given, way);
            if (parameters == null) {
                return null;
            }
            boolean cutBelow = given.has("at_least");
            boolean cutAbove = given.has("at_most");
            return new Variation.Drawn(
                    cutBelow || cutAbove ? cut(given, parameters) : parameters.distribution(),
                    parameters.unit(),
                    parameters.place());
        } catch (IllegalArgumentException wrong) {
            refuse(given, Finding.of(ProblemKind.OUT_OF_RANGE, way, String.valueOf(wrong.getMessage())));
            return null;
        }
    }

    private @Nullable Parameters parameters(Section given, String way) {
        List<String> keys = switch (way) {
            case "uniform" -> List.of("from", "to");
            case "normal" -> List.of("mean", "deviation");
            case "lognormal" -> List.of("median");
            default -> List.of("least", "likely", "most");
        };
        // Not a stream of filtered values: each missing key is to be reported.
        List<Measure> measures = new ArrayList<>();
        for (String key : keys) {
            @Nullable Measure measure = Entries.measure(given, key);
            if (measure != null) {
                measures.add(measure);
            }
        }
        @Nullable
        Double ofLog = way.equals("lognormal") ? Entries.number(given, "deviation_of_log") : Double.valueOf(0);
        if (measures.size() < keys.size() || ofLog == null || !haveOneUnit(given, measures.toArray(Measure[]::new))) {
            return null;
        }
        double first = measures.get(0).number();
        double last = measures.get(measures.size() - 1).number();
        Distribution distribution = switch (way) {
            case "uniform" -> new Distribution.Uniform(first, last);
            case "normal" -> new Distribution.Normal(first, last);
            case "lognormal" -> new Distribution.Lognormal(first, ofLog);
            default -> new Distribution.Triangular(first, measures.get(1).number(), last);
        };
        return new Parameters(distribution, measures.get(0).unit(), given.placeOf(keys.get(0)));
    }

    private Distribution cut(Section given, Parameters parameters) {
        double least = end(given, "at_least", parameters.unit(), Double.NEGATIVE_INFINITY);
        double most = end(given, "at_most", parameters.unit(), Double.POSITIVE_INFINITY);
        return new Distribution.Truncated(parameters.distribution(), least, most);
    }

    private double end(Section given, String key, String unit, double none) {
        if (!given.has(key)) {
            return none;
        }
        @Nullable Measure measure = Entries.measure(given, key);
        if (measure == null) {
            return none;
        }
        haveOneUnit(given, measure, new Measure(0, unit));
        return measure.number();
    }

    private boolean haveOneUnit(Section given, Measure... measures) {
        List<String> units = Stream.of(measures).map(Measure::unit).distinct().toList();
        if (units.size() > 1) {
            String found =
                    String.join(", ", Stream.of(measures).map(Measure::text).toList());
            refuse(given, Finding.of(ProblemKind.WRONG_UNIT, found, "one unit, written alike each time"));
        }
        return units.size() == 1;
    }

    private void refuse(Section given, Finding finding) {
        section.values().problems().add(given.place(), name, finding);
    }
}
