package org.headfall.scenarios.sweep.document;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.document.ValueReader;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.sweep.sampling.Sampling;
import org.jspecify.annotations.Nullable;

/** Reads how runs are chosen: {@code design}, {@code samples}, {@code seed}, {@code for_each_of}. */
final class DesignReader {

    /** More runs than anybody waits for; a slip of the finger is told before it fills a disk. */
    static final long MOST_RUNS = 1_000_000;

    /** How runs are chosen. */
    private enum Way {
        FULL_FACTORIAL,
        LATIN_HYPERCUBE,
        SOBOL_SEQUENCE,
        SOBOL_INDICES
    }

    private static final Map<String, Way> WORDS = new TreeMap<>(Map.of(
            "full factorial",
            Way.FULL_FACTORIAL,
            "latin hypercube",
            Way.LATIN_HYPERCUBE,
            "sobol sequence",
            Way.SOBOL_SEQUENCE,
            "sobol indices",
            Way.SOBOL_INDICES));

    private final Section document;
    private final List<Variable> variables;
    private final Set<String> refused;

    /**
     * A reader.
     *
     * @param document the sweep document
     * @param variables what varies
     * @param refused names of variables that could not be read
     */
    DesignReader(Section document, List<Variable> variables, Set<String> refused) {
        this.document = document;
        this.variables = variables;
        this.refused = refused;
    }

    /** The design, or null after a problem has been reported. */
    @Nullable
    Design read() {
        @Nullable Way way = document.choice("design", WORDS);
        if (way == null) {
            // Asked for all the same, or they would be reported as unknown keys.
            document.has("samples");
            document.has("seed");
            document.has("for_each_of");
            return null;
        }
        @Nullable Design design = way == Way.FULL_FACTORIAL ? fullFactorial() : sampled(way);
        if (design != null) {
            check(design);
        }
        return design;
    }

    private @Nullable Design fullFactorial() {
        for (String key : List.of("samples", "for_each_of")) {
            if (document.has(key)) {
                document.refuse(
                        key,
                        Finding.of(ProblemKind.CONFLICTING_KEYS, "design: full factorial", "the design of samples"));
            }
        }
        document.has("seed");
        for (Variable variable : variables) {
            if (!(variable.variation() instanceof Variation.Listed)) {
                document.refuse(
                        "design",
                        Finding.of(
                                ProblemKind.CONFLICTING_KEYS,
                                "the distribution of " + variable.name(),
                                "values, a range or a number of fields, of which there are combinations; or the design"
                                        + " latin hypercube or sobol sequence"));
            }
        }
        return new Design.FullFactorial();
    }

    private @Nullable Design sampled(Way way) {
        @Nullable Long samples = Entries.whole(document, "samples", 1, MOST_RUNS);
        @Nullable
        Long seed = document.has("seed")
                ? Entries.whole(document, "seed", Integer.MIN_VALUE, Integer.MAX_VALUE)
                : Long.valueOf(1);
        List<String> forEachOf = Entries.texts(document, "for_each_of");
        List<String> listed = variables.stream()
                .filter(variable -> variable.variation() instanceof Variation.Listed)
                .map(Variable::name)
                .toList();
        Set<String> names = new HashSet<>();
        for (String name : forEachOf) {
            if (!names.add(name)) {
                document.refuse("for_each_of", Finding.of(ProblemKind.DUPLICATE_NAME, name, "each variable once"));
            } else if (!listed.contains(name) && !refused.contains(name)) {
                document.refuse("for_each_of", notListed(name, listed));
            }
        }
        if (samples == null || seed == null) {
            return null;
        }
        boolean indices = way == Way.SOBOL_INDICES;
        if (indices && !forEachOf.isEmpty()) {
            document.refuse(
                    "for_each_of", Finding.of(ProblemKind.CONFLICTING_KEYS, "design: sobol indices", "another design"));
        }
        return indices
                ? new Design.ForSobolIndices(samples.intValue(), seed)
                : new Design.Sampled(
                        way == Way.LATIN_HYPERCUBE ? Sampling.LATIN_HYPERCUBE : Sampling.SOBOL_SEQUENCE,
                        samples.intValue(),
                        seed,
                        forEachOf);
    }

    private static Finding notListed(String name, List<String> listed) {
        return listed.isEmpty()
                ? Finding.of(
                        ProblemKind.NOT_A_CHOICE,
                        name,
                        "variables with values, a range or a number of fields, of which there is none here")
                : ValueReader.notAChoice(name, listed);
    }

    private void check(Design design) {
        double runs = RunList.count(design, variables);
        if (runs > MOST_RUNS) {
            document.refuse(
                    "design",
                    Finding.of(
                            ProblemKind.OUT_OF_RANGE,
                            String.format(Locale.ROOT, "%.0f runs", runs),
                            "at most " + MOST_RUNS + " runs"));
        }
        int axes = variables.size() * (design instanceof Design.ForSobolIndices ? 2 : 1);
        if (axes > Sampling.MOST_AXES) {
            document.refuse(
                    "vary",
                    Finding.of(
                            ProblemKind.OUT_OF_RANGE,
                            variables.size() + " variables",
                            "at most " + Sampling.MOST_AXES));
        }
    }
}
