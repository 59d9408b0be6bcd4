package org.headfall.scenarios.results;

import java.util.List;
import java.util.Optional;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitResult;

/**
 * What a finished run says about how sure its figures are.
 *
 * @param heads numerical error of head at each station (m), in the order of the stations
 * @param limits outcomes of its limits, each with its error
 * @param gridAndBoundaryTested whether errors hold those of the grid and of far boundaries
 */
public record StatedErrors(List<Double> heads, List<LimitResult> limits, boolean gridAndBoundaryTested) {

    /** Copies the lists. */
    public StatedErrors {
        heads = List.copyOf(heads);
        limits = List.copyOf(limits);
    }

    /** What became of a limit in the run, if it had the same one. */
    public Optional<LimitResult> of(Limit limit) {
        return limits.stream().filter(result -> result.limit().equals(limit)).findFirst();
    }
}
