package org.headfall.scenarios.run;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.SteadyBalance;
import org.headfall.solver.simulation.Settings;
import org.headfall.solver.simulation.Simulation;
import org.headfall.solver.simulation.Snapshot;

/**
 * Heads at the start, with the state of bores and springs as they were operated until then. A bore whose pump starts
 * on day 0 stands undisturbed in it.
 *
 * @param heads head of each cell (m above datum)
 * @param snapshot the state, dated day 0
 */
@SuppressWarnings("ArrayRecordComponent") // a field of 10⁵ cells, never compared
record StartState(double[] heads, Snapshot snapshot) {

    /** The moment before day 0, earlier than any change on that day. */
    static final double BEFORE = -1e-6;

    static StartState of(FlowProblem problem, StartHeads start, Settings settings) {
        if (start instanceof StartHeads.Steady steady) {
            FlowProblem operated = steady.problem(problem);
            double[] heads = new Simulation(operated, settings).steadyHead(0);
            StartState state = new StartState(heads, snapshot(operated, heads, 0, settings));
            double taken = Arrays.stream(state.discharges()).sum();
            SteadyBalance.close(operated, 0, taken, heads);
            System.arraycopy(heads, 0, state.snapshot().head(), 0, heads.length);
            return state;
        }
        double[] heads = ((StartHeads.Given) start).heads();
        return new StartState(heads, snapshot(problem, heads, BEFORE, settings));
    }

    /** Discharge of each bore, then each spring (m³/d). */
    double[] discharges() {
        return DoubleStream.concat(Arrays.stream(snapshot.boreRate()), Arrays.stream(snapshot.springDischarge()))
                .toArray();
    }

    /** A run of no length gives the state at its start. */
    private static Snapshot snapshot(FlowProblem problem, double[] heads, double day, Settings settings) {
        List<Snapshot> taken = new ArrayList<>();
        new Simulation(problem, settings).run(heads, day, day, new double[] {day}, state -> taken.add(copyOf(state)));
        return taken.get(0);
    }

    private static Snapshot copyOf(Snapshot state) {
        return new Snapshot(
                0,
                state.head().clone(),
                state.boreWallHead().clone(),
                state.boreLevel().clone(),
                state.boreRate().clone(),
                state.boreWantedRate().clone(),
                state.springDischarge().clone(),
                state.springHead().clone(),
                state.headError().clone(),
                state.balance());
    }
}
