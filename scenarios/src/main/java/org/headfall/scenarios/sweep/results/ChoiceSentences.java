package org.headfall.scenarios.sweep.results;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.headfall.scenarios.sweep.document.Aim;
import org.headfall.scenarios.sweep.results.RankedChoices.Choice;

/** What is said of choices that got the same samples. */
public final class ChoiceSentences {

    /** More names than this are not read in a sentence. */
    private static final int MOST_NAMES = 5;

    private final SweepTable table;
    private final RankedChoices choices;

    /**
     * Sentences about choices.
     *
     * @param table the runs
     * @param choices the choices they make
     */
    public ChoiceSentences(SweepTable table, RankedChoices choices) {
        this.table = table;
        this.choices = choices;
    }

    /** What an aim takes of the samples of a choice, such as "mean over its samples". */
    public static String over(Aim aim) {
        return aim.reachedIn().isPresent()
                ? "reached in " + Numbers.perCent(aim.reachedIn().getAsDouble()) + " of its samples"
                : "mean over its samples";
    }

    /**
     * By what choices are ranked, such as "mean of 64 samples".
     *
     * @param aim the aim that they are ranked by
     */
    public String measure(Aim aim) {
        int samples = choices.samples();
        return aim.reachedIn().isPresent()
                ? "value reached in " + Numbers.perCent(aim.reachedIn().getAsDouble()) + " of " + samples + " samples"
                : "mean of " + samples + " samples";
    }

    /**
     * The best choice, what is not told apart from it, and how limits fare.
     *
     * @return nothing if no ranking is asked for or no choice has figures
     */
    Optional<String> best() {
        List<Choice> ranked = choices.ranked();
        return ranked.isEmpty()
                ? Optional.empty()
                : table.sweep().questions().ranking().map(aim -> best(ranked, aim));
    }

    private String best(List<Choice> ranked, Aim aim) {
        Choice best = ranked.get(0);
        String unit = table.sweep().figure(aim.figure()).unit();
        String error = Double.isNaN(best.error()) ? "" : " (± " + Numbers.error(best.error()) + ", 95 % by sampling)";
        return "Best choice by the aim asked for (" + (aim.largest() ? "largest " : "smallest ") + aim.figure() + ", "
                + measure(aim) + "): " + best.name() + " with " + Numbers.words(best.value())
                + (unit.isEmpty() ? "" : " " + unit) + error + "." + ties(ranked) + leftOut(choices.leftOut(aim))
                + (choices.hasLimits() ? LimitsSentence.of(ranked) : "");
    }

    private static String ties(List<Choice> ranked) {
        List<String> like = ranked.stream()
                .skip(1)
                .filter(Choice::likeTheBest)
                .map(Choice::name)
                .toList();
        if (like.isEmpty()) {
            return ranked.size() > 1 ? " All others are told apart from it." : "";
        }
        return " Not told apart from it: " + listed(like) + "; look at the other figures to choose among them.";
    }

    private static String leftOut(List<String> names) {
        return names.isEmpty()
                ? ""
                : " Not compared, with figures of fewer than half as many samples as others: " + listed(names) + ".";
    }

    private static String listed(List<String> names) {
        String more = names.size() > MOST_NAMES ? " and " + (names.size() - MOST_NAMES) + " more" : "";
        return names.stream().limit(MOST_NAMES).collect(Collectors.joining("; ")) + more;
    }
}
