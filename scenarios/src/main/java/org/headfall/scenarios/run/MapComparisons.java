package org.headfall.scenarios.run;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.LeftOut;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitPlace;
import org.headfall.scenarios.recording.HeadGrid;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.nearfield.CentreHeads;
import org.headfall.solver.simulation.Settings;
import org.headfall.solver.simulation.Simulation;
import org.headfall.solver.simulation.SimulationObserver;
import org.headfall.solver.simulation.Snapshot;

/**
 * Heads of the grid in the other runs that limits on the map compare with. These runs are made: unit responses are known at
 * stations only.
 *
 * @param description the run
 * @param problem its problem
 * @param start its start
 * @param settings accuracy and threads
 * @param days days on which heads are wanted, increasing, the first 0
 */
@SuppressWarnings("ArrayRecordComponent") // handed on and never compared
record MapComparisons(
        RunDescription description, FlowProblem problem, StartState start, Settings settings, double[] days) {

    /** Heads on the days in each other run that a limit on the map needs, other cases excepted. */
    Map<Comparison, List<HeadGrid>> forLimits(List<Limit> limits) {
        Map<Comparison, List<HeadGrid>> others = new HashMap<>();
        for (Limit limit : limits) {
            if (limit.place() instanceof LimitPlace.OnMap
                    && limit.needsOtherRun()
                    && !(limit.comparison() instanceof Comparison.WithCase)) {
                others.computeIfAbsent(limit.comparison(), this::heads);
            }
        }
        return others;
    }

    private List<HeadGrid> heads(Comparison comparison) {
        if (comparison instanceof Comparison.BeforeAnyTaking) {
            double[] heads = StartState.of(problem, new StartHeads.Steady(Set.of()), settings)
                    .heads();
            return Arrays.stream(days).mapToObj(day -> new HeadGrid(day, heads)).toList();
        }
        FlowProblem without = StoppedTaking.always(problem, LeftOut.bores(description, comparison));
        CentreHeads centres = without.centreHeads();
        List<HeadGrid> kept = new ArrayList<>();
        kept.add(new HeadGrid(0, centres.of(start.heads(), start.snapshot().boreRate())));
        SimulationObserver observer = new SimulationObserver() {
            @Override
            public void recorded(Snapshot snapshot) {
                if (snapshot.day() > 0) {
                    kept.add(new HeadGrid(snapshot.day(), centres.of(snapshot.head(), snapshot.boreRate())));
                }
            }
        };
        try (Simulation simulation = new Simulation(without, settings)) {
            simulation.run(start.heads(), 0, description.endDay(), days, observer);
        }
        return kept;
    }
}
