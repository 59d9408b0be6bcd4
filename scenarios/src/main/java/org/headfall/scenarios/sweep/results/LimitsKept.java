package org.headfall.scenarios.sweep.results;

import java.util.List;
import org.headfall.scenarios.sweep.statistics.Share;

/** In how many of its runs a choice keeps all limits. */
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
}
