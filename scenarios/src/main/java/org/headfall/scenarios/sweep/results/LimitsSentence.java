package org.headfall.scenarios.sweep.results;

import java.util.Comparator;
import java.util.List;
import org.headfall.scenarios.sweep.results.RankedChoices.Choice;
import org.headfall.scenarios.sweep.statistics.Share;

/** What the best choice does to limits, in a sentence. */
final class LimitsSentence {

    private LimitsSentence() {}

    /**
     * How the best choice fares with limits, and which one does better.
     *
     * @param ranked choices from the best on, at least one
     */
    static String of(List<Choice> ranked) {
        Choice best = ranked.get(0);
        if (keepsAll(best)) {
            return " It keeps all limits in each of its " + best.keepsLimits().of() + " runs" + judged(best) + ".";
        }
        return (isJudged(best)
                        ? " It keeps all limits in " + kept(best) + "; "
                        : " Whether it keeps all limits could not be judged in any of its runs; ")
                + ranked.stream()
                        .filter(LimitsSentence::keepsAll)
                        .findFirst()
                        .map(choice -> "the best choice that keeps them in each of its runs" + judged(choice) + " is "
                                + choice.name() + ".")
                        .orElseGet(() -> mostOften(ranked));
    }

    private static String mostOften(List<Choice> ranked) {
        return ranked.stream()
                .filter(LimitsSentence::isJudged)
                .max(Comparator.comparingDouble(choice -> choice.keepsLimits().value()))
                .map(most -> "no choice keeps them in each of its runs, most often "
                        + (most.equals(ranked.get(0))
                                ? "this one does."
                                : most.name() + " does, in " + kept(most) + "."))
                .orElse("nor in any run of another choice.");
    }

    private static boolean isJudged(Choice choice) {
        return choice.keepsLimits().of() > 0;
    }

    private static boolean keepsAll(Choice choice) {
        return isJudged(choice) && choice.keepsLimits().isAll();
    }

    private static String judged(Choice choice) {
        return choice.keepsLimits().of() < choice.places().size() ? " that could be judged" : "";
    }

    private static String kept(Choice choice) {
        Share share = choice.keepsLimits();
        return share.count() + " of " + share.of() + " runs" + judged(choice) + " (sampling leaves "
                + Numbers.perCent(share.low()) + " to " + Numbers.perCent(share.high()) + ")";
    }
}
