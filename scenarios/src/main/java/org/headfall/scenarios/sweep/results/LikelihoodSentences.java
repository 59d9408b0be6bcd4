package org.headfall.scenarios.sweep.results;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** How often things happen, in few sentences: what happens equally often is said once, choices of one word together. */
final class LikelihoodSentences {

    /** More names than this are not read in a sentence; the table has them all. */
    private static final int MOST_NAMES = 6;

    private final Map<String, List<Likelihood>> byEvent = new LinkedHashMap<>();

    /**
     * Sentences.
     *
     * @param likelihoods in the order in which they are said
     */
    LikelihoodSentences(List<Likelihood> likelihoods) {
        for (Likelihood likelihood : likelihoods) {
            byEvent.computeIfAbsent(likelihood.what(), what -> new ArrayList<>())
                    .add(likelihood);
        }
    }

    List<String> all() {
        Map<String, List<String>> bySummary = new LinkedHashMap<>();
        byEvent.forEach((what, likelihoods) -> bySummary
                .computeIfAbsent(summary(likelihoods), summary -> new ArrayList<>())
                .add(what));
        List<String> sentences = new ArrayList<>();
        bySummary.forEach((summary, events) -> sentences.add(
                events.size() == 1
                        ? events.get(0) + ": " + summary + "."
                        : SweepSentences.capitalised(summary) + ": " + names(events) + "."));
        return sentences;
    }

    private static String names(List<String> of) {
        return of.stream().limit(MOST_NAMES).collect(Collectors.joining("; "))
                + (of.size() > MOST_NAMES ? "; and " + (of.size() - MOST_NAMES) + " more" : "");
    }

    /** One event with all its choices. */
    private static String summary(List<Likelihood> likelihoods) {
        Map<String, List<Likelihood>> byWords = likelihoods.stream()
                .collect(Collectors.groupingBy(Likelihood::words, LinkedHashMap::new, Collectors.toList()));
        return byWords.values().stream().map(LikelihoodSentences::alike).collect(Collectors.joining(", "));
    }

    /** Choices that have one word. */
    private static String alike(List<Likelihood> likelihoods) {
        Likelihood first = likelihoods.get(0);
        String words = first.words().isEmpty() ? "" : first.words() + " ";
        List<String> choices = likelihoods.stream()
                .map(Likelihood::choice)
                .filter(choice -> !choice.isEmpty())
                .toList();
        String with = choices.isEmpty() ? "" : "with " + names(choices) + " ";
        String share = likelihoods.size() == 1 ? alone(first) : range(likelihoods);
        return words.isEmpty() && with.isEmpty() ? share : words + with + "(" + share + ")";
    }

    private static String alone(Likelihood likelihood) {
        if (likelihood.share().of() == 0) {
            return "no run says";
        }
        return Numbers.perCent(likelihood.share().value()) + " of "
                + likelihood.share().of() + " runs"
                + (likelihood.sampled()
                        ? "; sampling leaves "
                                + Numbers.perCent(likelihood.share().low()) + " to "
                                + Numbers.perCent(likelihood.share().high())
                        : "");
    }

    private static String range(List<Likelihood> likelihoods) {
        double least = likelihoods.stream()
                .mapToDouble(likelihood -> likelihood.share().value())
                .min()
                .orElse(Double.NaN);
        double most = likelihoods.stream()
                .mapToDouble(likelihood -> likelihood.share().value())
                .max()
                .orElse(Double.NaN);
        int fewest = likelihoods.stream()
                .mapToInt(likelihood -> likelihood.share().of())
                .min()
                .orElse(0);
        boolean same =
                likelihoods.stream().allMatch(likelihood -> likelihood.share().of() == fewest);
        String share = least == most ? Numbers.perCent(least) : Numbers.perCent(least) + " to " + Numbers.perCent(most);
        return share + " of " + fewest + (same ? " runs each" : " runs or more each");
    }
}
