package org.headfall.scenarios.run;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.flow.FlowProblem;

/** Heads at the start of a run, and how bores were operated until then. */
public sealed interface StartHeads {

    /**
     * Given heads. Until the start, bores were operated as they are just before day 0.
     *
     * @param heads head of each cell (m above datum)
     */
    @SuppressWarnings("ArrayRecordComponent") // a field of 10⁵ cells, shared and never compared
    record Given(double[] heads) implements StartHeads {}

    /**
     * Heads that would not change if some bores were operated for ever as on day 0, and no others.
     *
     * @param bores names of those bores
     */
    record Steady(Set<String> bores) implements StartHeads {

        /** Copies the set. */
        public Steady {
            bores = Set.copyOf(bores);
        }

        /** The problem whose steady heads they are: the other bores are there, but off. */
        FlowProblem problem(FlowProblem problem) {
            return problem.withBores(onlyOperated(problem.bores(), bores));
        }
    }

    /** Head of each cell, if the start is not one at rest. */
    default Optional<double[]> given() {
        return this instanceof Given given ? Optional.of(given.heads()) : Optional.empty();
    }

    /** The same bores, of which only those named are operated. */
    static List<Bore> onlyOperated(List<Bore> bores, Set<String> operated) {
        return bores.stream()
                .map(bore -> operated.contains(bore.name()) ? bore : bore.withPhases(List.of()))
                .collect(Collectors.toList());
    }
}
