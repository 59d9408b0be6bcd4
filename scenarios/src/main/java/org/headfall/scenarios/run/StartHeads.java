package org.headfall.scenarios.run;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.response.StationResponses;
import org.headfall.solver.response.SuperposedRun;

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
     * @param asOperated all bores as they were operated until the start, if that is not as the problem says
     */
    record Steady(Set<String> bores, Optional<List<Bore>> asOperated) implements StartHeads {

        /** Copies the set. */
        public Steady {
            bores = Set.copyOf(bores);
        }

        /**
         * Steady heads with the operations of the problem.
         *
         * @param bores names of the bores that are operated
         */
        public Steady(Set<String> bores) {
            this(bores, Optional.empty());
        }

        /** The problem whose steady heads they are: the other bores are there, but off. */
        FlowProblem problem(FlowProblem problem) {
            return problem.withBores(onlyOperated(asOperated.orElse(problem.bores()), bores));
        }
    }

    /**
     * A run by superposition from these heads on.
     *
     * @param before the problem as it was operated until the start; what it says of bores after the start does not matter
     * @param problem the problem as it is operated from the start on
     * @param responses responses of the problem
     * @param accuracy error of head that steps are chosen for (m)
     * @return the run, at its start
     */
    default SuperposedRun superposed(
            FlowProblem before, FlowProblem problem, StationResponses responses, double accuracy) {
        return this instanceof Steady steady
                ? SuperposedRun.fromSteady(problem, steady.problem(before), responses, accuracy)
                : SuperposedRun.fromGiven(problem, responses, accuracy);
    }

    /** The same heads for a problem whose bores are operated otherwise from the start on. */
    default StartHeads withBores(List<Bore> operatedUntilThen) {
        return this instanceof Steady steady ? new Steady(steady.bores(), Optional.of(operatedUntilThen)) : this;
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
