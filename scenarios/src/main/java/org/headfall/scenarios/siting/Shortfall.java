package org.headfall.scenarios.siting;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** Why no further site was found, in words. */
final class Shortfall {

    /** Reasons that are named, those of most cells first. */
    private static final int NAMED = 4;

    private final boolean[] active;
    private final double wanted;
    private final List<String> names;
    private final List<String> usedUp;

    /**
     * Of a search.
     *
     * @param active cells of the aquifer
     * @param wanted wanted rate (m³/d); zero if the largest is looked for
     * @param names names of what decides, by number
     * @param usedUp limits of which nothing is left without any new bore
     */
    Shortfall(boolean[] active, double wanted, List<String> names, List<String> usedUp) {
        this.active = active;
        this.wanted = wanted;
        this.names = names;
        this.usedUp = usedUp;
    }

    /**
     * What decides in the cells that allow too little, those that most cells have first, and whether the search ended before
     * all others were tried.
     *
     * @param bounds largest rate of each cell and what decides it
     * @param trials what was tried for the site that was not found
     * @return sentences without a full stop at the end
     */
    String words(RateBounds bounds, Trials trials) {
        int[] counts = new int[names.size()];
        int cells = 0;
        for (int cell = 0; cell < active.length; cell++) {
            if (active[cell]) {
                cells++;
                double rate = bounds.rate()[cell];
                counts[bounds.ruling()[cell]] += rate <= 0 || rate < wanted ? 1 : 0;
            }
        }
        List<String> parts = new ArrayList<>();
        IntStream.range(0, counts.length)
                .filter(reason -> counts[reason] > 0)
                .boxed()
                .sorted(Comparator.comparingInt((Integer reason) -> counts[reason])
                        .reversed())
                .limit(NAMED)
                .forEach(reason -> parts.add(names.get(reason) + " in " + counts[reason]));
        List<String> sentences = new ArrayList<>();
        sentences.add(found(trials));
        if (!parts.isEmpty()) {
            sentences.add((trials.untried() > 0 ? "In cells that do not allow it by the map, of " : "Of ") + cells
                    + " cells of the aquifer, what decides is " + String.join(", ", parts));
        }
        if (!usedUp.isEmpty()) {
            sentences.add("Used up without any new bore, within the numerical error: " + String.join("; ", usedUp));
        }
        return String.join(". ", sentences);
    }

    private static String found(Trials trials) {
        if (trials.untried() > 0) {
            return "the search ended after " + trials.failed()
                    + " cells, the best of the map, none of which allows the rate when it is solved for; "
                    + trials.untried()
                    + " more allow it by the map and were not tried, so a little lower rate may find sites there";
        }
        return trials.failed() > 0
                ? "no further cell allows the rate: " + trials.failed()
                        + " did by the map and do not when they are solved for"
                : "no further cell allows the rate";
    }
}
