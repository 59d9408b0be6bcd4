package org.headfall.scenarios.siting;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** Why no further site was found, in words. */
final class Shortfall {

    /** Reasons that are named, those of most cells first. */
    private static final int NAMED = 4;

    private Shortfall() {}

    /**
     * What decides in the cells that allow too little, those that most cells have first.
     *
     * @param bounds largest rate of each cell and what decides it
     * @param active cells of the aquifer
     * @param wanted wanted rate (m³/d); zero if the largest is looked for
     * @param names names of what decides, by number
     * @param usedUp limits of which nothing is left without any new bore
     * @return sentences without a full stop at the end
     */
    static String words(RateBounds bounds, boolean[] active, double wanted, List<String> names, List<String> usedUp) {
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
        String deciding = parts.isEmpty()
                ? "those that seemed to allow the rate do not when they are solved for"
                : "of the " + cells + " cells of the aquifer, what decides is " + String.join(", ", parts);
        String before = usedUp.isEmpty()
                ? ""
                : ". Used up without any new bore, within the numerical error: " + String.join("; ", usedUp);
        return "no further cell allows the rate: " + deciding + before;
    }
}
