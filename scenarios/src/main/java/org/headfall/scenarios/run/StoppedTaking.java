package org.headfall.scenarios.run;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.OperatingPhase;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.flow.FlowProblem;

/** A problem in which some bores take nothing, from a day on or at all. */
final class StoppedTaking {

    private StoppedTaking() {}

    /**
     * The problem with some bores off from a day on.
     *
     * @param problem the problem
     * @param stopped those bores, by their place in the problem
     * @param day the day (d)
     */
    static FlowProblem from(FlowProblem problem, BitSet stopped, double day) {
        List<Bore> bores = new ArrayList<>(problem.bores());
        stopped.stream().forEach(i -> {
            List<OperatingPhase> phases = new ArrayList<>(bores.get(i).phases());
            phases.removeIf(phase -> phase.fromDay() >= day);
            phases.add(new OperatingPhase(day, new Operation.Off()));
            bores.set(i, bores.get(i).withPhases(phases));
        });
        return problem.withBores(bores);
    }

    /**
     * The problem with some bores never operated.
     *
     * @param problem the problem
     * @param stopped those bores, by their place in the problem
     */
    static FlowProblem always(FlowProblem problem, BitSet stopped) {
        List<Bore> bores = new ArrayList<>(problem.bores());
        stopped.stream().forEach(i -> bores.set(i, bores.get(i).withPhases(List.of())));
        return problem.withBores(bores);
    }
}
