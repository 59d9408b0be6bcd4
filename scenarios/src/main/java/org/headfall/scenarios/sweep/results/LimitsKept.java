package org.headfall.scenarios.sweep.results;

import java.util.Comparator;
import java.util.List;
import org.headfall.scenarios.sweep.results.RankedChoices.Choice;
import org.headfall.scenarios.sweep.statistics.Share;

/** In how many of its runs a choice keeps all limits, and what that says of the best choice. */
final class LimitsKept {

    private LimitsKept() {}

    /**
     * The share of runs that keep all limits. A run counts if it can be judged: it crosses some limit, or it is known to keep
     * all. A limit without a margin says neither.
     *
     * @param margins margin of each limit by run, negative where it is crossed, NaN where it could not be judged
     * @param places the runs, as places from 0
     */
    static Share share(List<double[]> margins, List<Integer> places) {
        int kept = 0;
        int crossed = 0;
        for (int place : places) {
            if (margins.stream().anyMatch(margin -> margin[place] < 0)) {
                crossed++;
            } else if (margins.stream().noneMatch(margin -> Double.isNaN(margin[place]))) {
                kept++;
            }
        }
        return new Share(kept, kept + crossed);
    }

    /**
     * How the best choice fares with limits, and which one does better.
     *
     * @param ranked choices from the best on, at least one
     */
    static String sentence(List<Choice> ranked) {
        Choice best = ranked.get(0);
        if (keepsAll(best)) {
            return " It keeps all limits in each of its " + best.keepsLimits().of() + " runs" + judged(best) + ".";
        }
        return (isJudged(best)
                        ? " It keeps all limits in " + kept(best) + "; "
                        : " Whether it keeps all limits could not be judged in any of its runs; ")
                + ranked.stream()
                        .filter(LimitsKept::keepsAll)
                        .findFirst()
                        .map(choice -> "the best choice that keeps them in each of its runs" + judged(choice) + " is "
                                + choice.name() + ".")
                        .orElseGet(() -> mostOften(ranked));
    }

    private static String mostOften(List<Choice> ranked) {
        return ranked.stream()
                .filter(LimitsKept::isJudged)
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
