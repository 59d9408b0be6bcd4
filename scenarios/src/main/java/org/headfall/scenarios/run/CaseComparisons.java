package org.headfall.scenarios.run;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.recording.HeadGrid;
import org.headfall.scenarios.recording.StationSeries;
import org.jspecify.annotations.Nullable;

/** What limits need of the other cases that they compare with. */
final class CaseComparisons {

    private final List<Limit> limits;
    private final Map<String, Simulated> cases;

    /**
     * Comparisons of a run with cases.
     *
     * @param limits limits of the run
     * @param cases the cases by their names
     */
    CaseComparisons(List<Limit> limits, Map<String, Simulated> cases) {
        this.limits = limits;
        this.cases = cases;
    }

    /** Series of the stations in each case that a limit compares with. */
    Map<Comparison, List<StationSeries>> series() {
        return of(one -> one.recording().series());
    }

    /** Heads of the grid in each case that a limit compares with. */
    Map<Comparison, List<HeadGrid>> grids() {
        return of(one -> one.maps().grids());
    }

    private <T> Map<Comparison, T> of(Function<Simulated, T> what) {
        Map<Comparison, T> found = new HashMap<>();
        for (Limit limit : limits) {
            if (limit.comparison() instanceof Comparison.WithCase with) {
                @Nullable Simulated other = cases.get(with.name());
                if (other != null) {
                    found.put(with, what.apply(other));
                }
            }
        }
        return found;
    }
}
