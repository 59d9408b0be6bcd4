package org.headfall.scenarios.sweep.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.headfall.scenarios.sweep.document.Aim;
import org.headfall.scenarios.sweep.document.Design;
import org.headfall.scenarios.sweep.document.Variable;
import org.headfall.scenarios.sweep.results.Influence;
import org.headfall.scenarios.sweep.results.Likelihood;
import org.headfall.scenarios.sweep.results.SweepAnswers;
import org.headfall.scenarios.sweep.results.SweepTable;
import org.headfall.scenarios.sweep.results.Unranked;
import org.headfall.scenarios.sweep.statistics.Ranks;

/** What the page of a sweep says in sentences. */
final class SweepSentences {

    private final SweepTable table;
    private final SweepAnswers answers;

    SweepSentences(SweepTable table, SweepAnswers answers) {
        this.table = table;
        this.answers = answers;
    }

    /** How many runs there are, have figures and failed. */
    String counts() {
        int failed = table.failures().count();
        int all = table.runs().size();
        return table.finished() + " of " + all + " runs have figures, " + failed + " failed, "
                + (all - table.finished() - failed) + " are not made yet.";
    }

    /** The answer, most wanted first. */
    List<String> answer() {
        List<String> sentences = new ArrayList<>();
        for (Likelihood likelihood : answers.likelihoods()) {
            sentences.add(sentence(likelihood));
        }
        String last = "";
        for (Influence influence : answers.influences()) {
            if (!influence.figure().equals(last)) {
                last = influence.figure();
                Optional<Unranked> unranked = answers.unranked(influence.figure());
                dependence(influence, unranked).ifPresent(sentences::add);
            }
        }
        List<Integer> ranked = answers.ranked();
        if (!ranked.isEmpty()) {
            Aim aim = table.sweep().questions().ranking().orElseThrow();
            sentences.add(
                    0,
                    "Best by the aim asked for (" + (aim.largest() ? "largest " : "smallest ") + aim.figure()
                            + "): run " + (ranked.get(0) + 1) + " with "
                            + Numbers.words(table.figure(aim.figure())[ranked.get(0)])
                            + unit(aim.figure())
                            + ties(answers.sharingTheBest())
                            + " The table below says what it gives up."
                            + (answers.limitsOfTheBest().isEmpty() ? "" : " " + answers.limitsOfTheBest()));
        }
        if (table.failures().count() > 0) {
            sentences.add(
                    Math.min(1, sentences.size()),
                    table.failures().sentence(table.runs().size())
                            + (table.finished() > 0
                                    ? ". What is said here is of the others, which may differ from those that failed in more"
                                            + " than this."
                                    : "."));
        }
        return sentences;
    }

    private static String ties(int sharing) {
        return sharing > 1
                ? ". It is the first of " + sharing
                        + " runs with that value: look at the other figures to choose among them."
                : ".";
    }

    private String unit(String figure) {
        String unit = table.sweep().figure(figure).unit();
        return unit.isEmpty() ? "" : " " + unit;
    }

    private Optional<String> dependence(Influence influence, Optional<Unranked> unranked) {
        String name = influence.figure();
        String among = unranked.isEmpty() ? "" : "Among what was ranked, ";
        String rest = unranked.map(left -> " " + left.words()).orElse("");
        if (!Double.isNaN(influence.swing().length())) {
            return Optional.of(
                    among + name + " depends most on " + influence.variable().name() + ": "
                            + Numbers.words(influence.swing().low()) + unit(name)
                            + (influence.variable().numeric() ? " where it is low, " : " with one of its values, ")
                            + Numbers.words(influence.swing().high()) + unit(name)
                            + (influence.variable().numeric()
                                    ? " where it is high, in the mean."
                                    : " with another, in the mean.")
                            + rest);
        }
        return influence.total().isPresent()
                ? Optional.of(name + " depends most on " + influence.variable().name() + ": "
                        + Numbers.perCent(influence.total().getAsDouble())
                        + " of its variance would be left if all else were known.")
                : unranked.map(left -> name + ": no influence was ranked. " + left.words());
    }

    private static String sentence(Likelihood likelihood) {
        String choice = likelihood.choice().isEmpty() ? "" : " with " + likelihood.choice();
        String words = likelihood.words().isEmpty() ? "" : likelihood.words() + ", ";
        return likelihood.share().of() == 0
                ? likelihood.what() + choice + ": no run says."
                : likelihood.what() + choice + ": " + words
                        + Numbers.perCent(likelihood.share().value()) + " of "
                        + likelihood.share().of() + " runs"
                        + (likelihood.sampled()
                                ? " (sampling leaves "
                                        + Numbers.perCent(likelihood.share().low()) + " to "
                                        + Numbers.perCent(likelihood.share().high()) + ")."
                                : ".");
    }

    /** What varies and how runs were chosen. */
    List<String> varied() {
        List<String> sentences = new ArrayList<>();
        for (Variable variable : table.sweep().variables()) {
            double[] numbers = table.input(variable.name());
            String keys = variable.keys().stream().map(key -> key.text()).collect(Collectors.joining(", "));
            sentences.add(
                    variable.numeric()
                            ? variable.heading() + " from " + Numbers.words(Ranks.quantile(numbers, 0)) + " to "
                                    + Numbers.words(Ranks.quantile(numbers, 1)) + " (" + keys + ")"
                            : variable.name()
                                    + (variable.variation().isDrawn() ? ", a random field" : ", one of several") + " ("
                                    + keys + ")");
        }
        sentences.add(
                table.sweep().design() instanceof Design.FullFactorial
                        ? "Every combination was run; a share of runs is no probability."
                        : "Runs are samples; the interval of a share counts sampling alone, as if samples were"
                                + " independent, not whether the distributions are right.");
        return sentences;
    }
}
