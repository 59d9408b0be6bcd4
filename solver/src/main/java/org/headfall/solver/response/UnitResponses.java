package org.headfall.solver.response;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.UnitResponseSystem;
import org.headfall.solver.linear.WorkerTeam;
import org.headfall.solver.nearfield.ObservedHead;
import org.headfall.solver.time.StepControl;
import org.headfall.solver.time.TrapezoidalBdf2;

/**
 * Step responses to every bore and spring, the causes, at every receptor: bores first, then springs, then points
 * without discharge. Immutable.
 */
public final class UnitResponses {

    /** Discharge for which responses are computed (m³/d): large enough to keep rounding away. */
    private static final double RATE = 1000;

    private static final double FIRST_TIME = 1e-3;
    private static final double SMALLEST_STEP = 1e-9;
    private static final int TIMES_PER_DECADE = 8;
    private static final int LANES = 6;

    private final ResponseTable table;

    private UnitResponses(ResponseTable table) {
        this.table = table;
    }

    /**
     * Computes the responses of a problem.
     *
     * @param problem the problem
     * @param points points that take no water, receptors only
     * @param horizon longest time wanted (d)
     * @param accuracy largest error of one step for a discharge of 1,000 m³/d (m)
     * @param threads threads of the linear solver
     * @return the responses
     */
    public static UnitResponses of(
            FlowProblem problem, List<ObservedHead> points, double horizon, double accuracy, int threads) {
        int causes = problem.bores().size() + problem.springs().size();
        int receptors = causes + points.size();
        double[] times = times(horizon);
        double[] atOnce = new double[causes * receptors];
        double[][] values = new double[times.length][causes * receptors];
        double[][] rates = new double[times.length][causes * receptors];
        try (WorkerTeam team = new WorkerTeam(threads)) {
            for (int first = 0; first < causes; first += LANES) {
                int[] lanes =
                        IntStream.range(first, Math.min(causes, first + LANES)).toArray();
                UnitResponseSystem system = new UnitResponseSystem(problem, points, lanes, RATE, team);
                TrapezoidalBdf2 integrator =
                        new TrapezoidalBdf2(system, new StepControl(accuracy, Double.POSITIVE_INFINITY, SMALLEST_STEP));
                double[] drawdown = new double[system.size()];
                int place = first * receptors;
                system.responses(drawdown, atOnce, place);
                integrator.restart(system.firstStep());
                for (int i = 0; i < times.length; i++) {
                    integrator.integrate(drawdown, i == 0 ? 0 : times[i - 1], times[i]);
                    system.responses(drawdown, values[i], place);
                    system.responseRates(integrator.rate(), rates[i], place);
                }
            }
        }
        return new UnitResponses(new ResponseTable(receptors, times, atOnce, values, rates));
    }

    private static double[] times(double horizon) {
        int intervals = (int) Math.ceil(TIMES_PER_DECADE * Math.log10(horizon / FIRST_TIME));
        double[] times = new double[intervals + 1];
        Arrays.setAll(times, i -> FIRST_TIME * Math.pow(horizon / FIRST_TIME, (double) i / intervals));
        times[intervals] = horizon;
        return times;
    }

    /** Number of bores and springs. */
    public int causes() {
        return table.causes();
    }

    /** Number of bores, springs and points. */
    public int receptors() {
        return table.receptors();
    }

    /** Responses of every cause at every receptor. */
    ResponseTable table() {
        return table;
    }

    /**
     * Drawdown at a receptor by a unit discharge of a cause that has lasted for a time.
     *
     * @param receptor the receptor
     * @param cause the cause
     * @param time how long the discharge has lasted (d)
     * @return drawdown per discharge (d/m²)
     * @throws IllegalArgumentException if the time lies beyond the horizon
     */
    public double at(int receptor, int cause, double time) {
        return table.at(receptor, cause, time);
    }
}
