package org.headfall.scenarios.sweep.results;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.headfall.scenarios.sweep.document.Aim;
import org.headfall.scenarios.sweep.document.Design;
import org.headfall.scenarios.sweep.document.Variable;
import org.headfall.scenarios.sweep.document.Variation;
import org.headfall.scenarios.sweep.statistics.LikelihoodWord;
import org.headfall.scenarios.sweep.statistics.Ranks;

/** What is said of a sweep in sentences, on its page and on the terminal. */
public final class SweepSentences {

    private final SweepTable table;
    private final SweepAnswers answers;
    private final SweepFindings findings;

    /**
     * Sentences about the runs of a sweep.
     *
     * @param findings what is found in them
     */
    public SweepSentences(SweepFindings findings) {
        this.findings = findings;
        table = findings.table();
        answers = findings.answers();
    }

    /** How many runs there are, have figures and failed. */
    public String counts() {
        int failed = table.failures().count();
        int all = table.runs().size();
        return table.finished() + " of " + all + " runs have figures, " + failed + " failed, "
                + (all - table.finished() - failed) + " are not made yet.";
    }

    /** The answer, most wanted first. */
    public List<String> answer() {
        List<String> sentences = new ArrayList<>();
        best().map(best -> findings.choices().isPresent() ? best : best + " The table below says what it gives up.")
                .ifPresent(sentences::add);
        failures().ifPresent(sentences::add);
        sentences.addAll(likelihoods());
        sentences.addAll(dependences());
        return sentences.stream().map(SweepSentences::capitalised).toList();
    }

    static String capitalised(String text) {
        return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }

    /**
     * The best choice, or the best run where samples are not repeated for choices, and whether it keeps the limits.
     *
     * @return nothing if no ranking is asked for or nothing has the figure
     */
    public Optional<String> best() {
        return findings.choices().isPresent()
                ? new ChoiceSentences(table, findings.choices().get()).best()
                : bestRun();
    }

    private Optional<String> bestRun() {
        List<Integer> ranked = answers.ranked();
        if (ranked.isEmpty()) {
            return Optional.empty();
        }
        Aim aim = table.sweep().questions().ranking().orElseThrow();
        return Optional.of("Best by the aim asked for (" + (aim.largest() ? "largest " : "smallest ") + aim.figure()
                + "): run " + (ranked.get(0) + 1) + chosen(ranked.get(0)) + " with "
                + Numbers.words(table.figure(aim.figure())[ranked.get(0)])
                + unit(aim.figure())
                + ties(answers.sharingTheBest())
                + luck()
                + (answers.limitsOfTheBest().isEmpty() ? "" : " " + answers.limitsOfTheBest()));
    }

    /** What was chosen for a run among listed values; empty where nothing was. */
    private String chosen(int place) {
        String values = table.runs().get(place).entrySet().stream()
                .filter(input ->
                        !input.getKey().numeric() && !input.getKey().variation().isDrawn())
                .map(input -> input.getKey().name() + " " + Choices.inSentence(input.getKey(), input.getValue()))
                .collect(Collectors.joining(", "));
        return values.isEmpty() ? "" : " (" + values + ")";
    }

    /** A warning that the best of many samples is no choice. */
    private String luck() {
        if (!answers.isSampled()) {
            return "";
        }
        boolean chosen = table.sweep().variables().stream()
                .anyMatch(variable -> !variable.variation().isDrawn());
        return " What is unknown differs from run to run, so that this is the luckiest sample"
                + (chosen
                        ? " as much as a choice; for_each_of compares choices over the same samples."
                        : ", not a choice.");
    }

    private Optional<String> failures() {
        if (table.failures().count() == 0) {
            return Optional.empty();
        }
        return Optional.of(table.failures().sentence(table.runs().size())
                + (table.finished() > 0
                        ? ". What is said here is of the others, which may differ from those that failed in more than this."
                        : "."));
    }

    /** How often limits are crossed and bounds are passed. */
    public List<String> likelihoods() {
        return new LikelihoodSentences(answers.likelihoods()).all();
    }

    /** What each figure asked for depends on. */
    public List<String> dependences() {
        Influences influences = new Influences(table);
        List<String> sentences = new ArrayList<>();
        findings.influences()
                .forEach((figure, of) -> sentences.add(
                        new Dependence(table.sweep().figure(figure), of, influences.unranked(figure)).sentence()));
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

    /** What the words for probabilities mean; nothing where none is used. */
    public String scale() {
        return answers.isSampled() && !answers.likelihoods().isEmpty()
                ? "Words for probabilities: " + LikelihoodWord.scale()
                        + ". The word follows the interval, not the share: it is for the middle of what sampling leaves, so that few runs make nothing certain (13 of 13 are likely, 16 of 16 very likely)."
                : "";
    }

    /** What varies and how runs were chosen. */
    public List<String> varied() {
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
        sentences.addAll(sampling());
        return sentences;
    }

    /** What the errors of sampling count, and what they do not. */
    private List<String> sampling() {
        Design design = table.sweep().design();
        if (design instanceof Design.FullFactorial) {
            return List.of("Every combination was run; a share of runs is no probability.");
        }
        List<String> sentences = new ArrayList<>();
        sentences.add(
                "Runs are samples; intervals count sampling alone, as if samples were independent (spread as evenly as"
                        + " these, they are mostly surer), not whether the distributions are right.");
        if (design instanceof Design.Sampled sampled && !sampled.forEachOf().isEmpty()) {
            sentences.add(
                    "Each choice of " + String.join(", ", sampled.forEachOf()) + " got the same " + sampled.samples()
                            + " samples, so that each sample counts once where choices are taken together.");
        }
        if (design instanceof Design.ForSobolIndices indices) {
            sentences.add(
                    "Of " + table.runs().size() + " runs " + 2 * indices.samples()
                            + " are independent samples; the others mix values of two of them and count for Sobol indices alone.");
        }
        table.sweep().variables().stream()
                .filter(variable -> variable.variation() instanceof Variation.Listed
                        && variable.variation().isDrawn())
                .map(variable -> "Of " + variable.name() + " "
                        + ((Variation.Listed) variable.variation()).inputs().size()
                        + " were drawn: intervals do not count what others would change.")
                .forEach(sentences::add);
        return sentences;
    }
}
