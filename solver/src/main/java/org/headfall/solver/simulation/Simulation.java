package org.headfall.solver.simulation;

import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.FlowSystem;
import org.headfall.solver.flow.RateHistory;
import org.headfall.solver.linear.WorkerTeam;
import org.headfall.solver.time.StepControl;
import org.headfall.solver.time.TrapezoidalBdf2;

/**
 * Runs a flow problem through time. Steps land exactly on recorded days and on days at which a rate, an operation or a
 * boundary jumps or bends; where it jumps the integrator starts anew with a short step.
 */
public final class Simulation implements AutoCloseable {

    private static final double SMALLEST_STEP = 1e-9;

    private final FlowProblem problem;
    private final Settings settings;
    private final WorkerTeam team;

    /**
     * Simulation of a problem.
     *
     * @param problem the problem
     * @param settings accuracy and threads
     */
    public Simulation(FlowProblem problem, Settings settings) {
        this.problem = problem;
        this.settings = settings;
        team = new WorkerTeam(settings.threads());
    }

    /**
     * Steady heads under the operations in force at a day.
     *
     * @param day the day (d)
     * @return head of each cell (m above datum)
     * @throws org.headfall.solver.flow.NoSteadyStateException if nothing ties heads down
     */
    public double[] steadyHead(double day) {
        double[] head = new double[problem.aquifer().grid().cellCount()];
        new FlowSystem(problem, settings.accuracy(), team, day).steady(day, head);
        return head;
    }

    /**
     * Runs from given heads.
     *
     * @param startHead head of each cell at the start (m above datum); not changed
     * @param fromDay day of the start (d)
     * @param toDay day of the end (d)
     * @param recordDays days to record, increasing, within the run; the start itself may be among them
     * @param observer is told of recorded days
     * @return what the run took, and the discharges of every step
     */
    public Outcome run(
            double[] startHead, double fromDay, double toDay, double[] recordDays, SimulationObserver observer) {
        long started = System.nanoTime();
        FlowSystem system = new FlowSystem(problem, settings.accuracy(), team, fromDay);
        TrapezoidalBdf2 integrator = new TrapezoidalBdf2(
                system, new StepControl(settings.accuracy(), settings.largestStep(), SMALLEST_STEP), team);
        double[] head = startHead.clone();
        double[] jumps = problem.jumps(fromDay, toDay);
        double day = fromDay;
        integrator.restart(system.firstStep());
        system.startRate(day, head, new double[head.length]);
        if (recordDays.length > 0 && recordDays[0] == fromDay) {
            observer.recorded(snapshot(system, head, integrator.accumulatedError(), day));
        }
        for (double stop : stops(fromDay, toDay, recordDays, jumps)) {
            system.stretchUntil(nextJump(jumps, day, toDay));
            integrator.integrate(head, day, stop);
            day = stop;
            observer.reached(day);
            if (Arrays.binarySearch(recordDays, day) >= 0) {
                observer.recorded(snapshot(system, head, integrator.accumulatedError(), day));
            }
            if (Arrays.binarySearch(jumps, day) >= 0) {
                integrator.restart(system.firstStep());
            }
        }
        return new Outcome(statistics(system, integrator, started), system.rateHistory(), head);
    }

    private double[] stops(double fromDay, double toDay, double[] recordDays, double[] jumps) {
        TreeSet<Double> stops = new TreeSet<>();
        for (double[] days : List.of(recordDays, jumps, problem.bends(fromDay, toDay), new double[] {toDay})) {
            for (double day : days) {
                if (day > fromDay && day <= toDay) {
                    stops.add(day);
                }
            }
        }
        return stops.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static double nextJump(double[] jumps, double day, double toDay) {
        for (double candidate : jumps) {
            if (candidate > day) {
                return candidate;
            }
        }
        // The values at the very end of the run are those before any jump there.
        return toDay;
    }

    private Snapshot snapshot(FlowSystem system, double[] head, double[] headError, double day) {
        int boreCount = problem.bores().size();
        int springCount = problem.springs().size();
        double[] wallHead = new double[boreCount];
        double[] level = new double[boreCount];
        double[] rate = new double[boreCount];
        double[] wanted = new double[boreCount];
        for (int i = 0; i < boreCount; i++) {
            rate[i] = system.discharge(i);
            wallHead[i] = system.wallHead(i, head);
            level[i] = system.levelInBore(i, head);
            wanted[i] = system.wantedDischarge(i);
        }
        double[] springDischarge = new double[springCount];
        double[] springHead = new double[springCount];
        for (int i = 0; i < springCount; i++) {
            springDischarge[i] = system.discharge(boreCount + i);
            springHead[i] = system.wallHead(boreCount + i, head);
        }
        return new Snapshot(
                day,
                head,
                wallHead,
                level,
                rate,
                wanted,
                springDischarge,
                springHead,
                headError,
                system.closeBalance(day));
    }

    private RunStatistics statistics(FlowSystem system, TrapezoidalBdf2 integrator, long started) {
        return new RunStatistics(
                system.size(),
                integrator.steps(),
                integrator.rejectedSteps(),
                system.linearSolves(),
                system.linearIterations(),
                integrator.largestError(),
                system.largestBalanceDiscrepancy(),
                (System.nanoTime() - started) * 1e-9);
    }

    /** Ends the threads of the linear solver. */
    @Override
    public void close() {
        team.close();
    }

    /**
     * What a run leaves.
     *
     * @param statistics what it took
     * @param rateHistory discharges of every step
     * @param head head of each cell at the end (m above datum)
     */
    @SuppressWarnings("ArrayRecordComponent") // the final state, handed over and never compared
    public record Outcome(RunStatistics statistics, RateHistory rateHistory, double[] head) {}
}
