package org.headfall.scenarios.sweep.document;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.headfall.scenarios.document.Section;
import org.headfall.scenarios.document.ValueReader;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.ProblemKind;
import org.jspecify.annotations.Nullable;

/** Reads the list {@code correlations}, and finds out whether numbers can be correlated like that. */
final class CorrelationReader {

    /** Ranks that are tried in place of one that contradicts others: hundredths between -1 and 1. */
    private static final int HUNDRED = 100;

    private final Section document;
    private final List<Variable> variables;
    private final Set<String> refused;
    private final List<Correlation> correlations = new ArrayList<>();
    private final Set<Set<String>> pairs = new HashSet<>();

    /**
     * A reader.
     *
     * @param document the sweep document
     * @param variables what varies
     * @param refused names of variables that could not be read
     */
    CorrelationReader(Section document, List<Variable> variables, Set<String> refused) {
        this.document = document;
        this.variables = variables;
        this.refused = refused;
    }

    /** The correlations that could be read. */
    List<Correlation> read() {
        List<String> drawn = variables.stream()
                .filter(variable -> variable.variation() instanceof Variation.Drawn)
                .map(Variable::name)
                .toList();
        for (Section section : Entries.sections(document, "correlations")) {
            List<String> between = Entries.texts(section, "between");
            @Nullable Double rank = Entries.number(section, "rank");
            section.done();
            // both are looked at, so that both are told
            boolean two = areTwo(section, between, drawn);
            boolean ranked = isRank(section, rank);
            if (two && ranked && rank != null) {
                correlations.add(new Correlation(between.get(0), between.get(1), rank));
            }
        }
        return List.copyOf(correlations);
    }

    private boolean areTwo(Section section, List<String> between, List<String> drawn) {
        List<String> unknown =
                between.stream().filter(name -> !drawn.contains(name)).toList();
        unknown.stream()
                .filter(name -> !refused.contains(name))
                .forEach(name -> section.refuse("between", ValueReader.notAChoice(name, drawn)));
        String found = String.join(", ", between);
        if (between.size() != 2 || between.get(0).equals(between.get(1))) {
            String allowed = "the names of two variables with distributions";
            section.refuse("between", Finding.of(ProblemKind.WRONG_TYPE, found, allowed));
            return false;
        }
        if (!pairs.add(Set.copyOf(between))) {
            section.refuse("between", Finding.of(ProblemKind.DUPLICATE_NAME, found, "each pair once, in any order"));
            return false;
        }
        return unknown.isEmpty();
    }

    private static boolean isRank(Section section, @Nullable Double rank) {
        if (rank != null && !(Math.abs(rank) < 1)) {
            section.refuse(
                    "rank", Finding.of(ProblemKind.OUT_OF_RANGE, rank.toString(), "more than -1 and less than 1"));
            return false;
        }
        return true;
    }

    /** Reports correlations that the design has no use for, or that contradict each other. */
    void check(@Nullable Design design) {
        if (design != null && !(design instanceof Design.Sampled) && !pairs.isEmpty()) {
            document.refuse(
                    "correlations",
                    Finding.of(
                            ProblemKind.CONFLICTING_KEYS,
                            "design: " + document.text("design"),
                            "the design latin hypercube or sobol sequence"));
        }
        if (!correlations.isEmpty() && !RunList.canBeCorrelated(variables, correlations)) {
            document.refuse(
                    "correlations",
                    Finding.of(
                            ProblemKind.OUT_OF_RANGE,
                            "ranks that no numbers can have together, pairs that are not given counting as 0",
                            "ranks that do not contradict each other" + example()));
        }
    }

    /** What the rank of one pair may be while the others stay, if that is enough; empty if more than one is wrong. */
    private String example() {
        for (int changed = 0; changed < correlations.size(); changed++) {
            Correlation wrong = correlations.get(changed);
            List<Correlation> tried = new ArrayList<>(correlations);
            int least = HUNDRED;
            int most = -HUNDRED;
            for (int rank = 1 - HUNDRED; rank < HUNDRED; rank++) {
                tried.set(changed, new Correlation(wrong.first(), wrong.second(), (double) rank / HUNDRED));
                if (RunList.canBeCorrelated(variables, tried)) {
                    least = Math.min(least, rank);
                    most = rank;
                }
            }
            if (least <= most) {
                return String.format(
                        Locale.ROOT,
                        ", for example that of %s and %s from %.2f to %.2f while the others stay",
                        wrong.first(),
                        wrong.second(),
                        (double) least / HUNDRED,
                        (double) most / HUNDRED);
            }
        }
        return "";
    }
}
