package org.headfall.solver.response;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.UnitResponseSystem;
import org.headfall.solver.linear.WorkerTeam;
import org.headfall.solver.time.StepControl;
import org.headfall.solver.time.TrapezoidalBdf2;

/**
 * Step responses of every bore and spring to every bore and spring. Immutable. Receptors and causes are counted alike:
 * bores first, then springs.
 */
public final class UnitResponses {

    /** Discharge for which responses are computed (m³/d): large enough to keep rounding away. */
    private static final double RATE = 1000;

    private static final double FIRST_TIME = 1e-3;
    private static final double SMALLEST_STEP = 1e-9;
    private static final int TIMES_PER_DECADE = 8;
    private static final int LANES = 6;

    private final ResponseCurve[][] curves;

    private UnitResponses(ResponseCurve[][] curves) {
        this.curves = curves;
    }

    /**
     * Computes the responses of a problem.
     *
     * @param problem the problem
     * @param horizon longest time wanted (d)
     * @param accuracy largest error of one step for a discharge of 1,000 m³/d (m)
     * @param threads threads of the linear solver
     * @return the responses
     */
    public static UnitResponses of(FlowProblem problem, double horizon, double accuracy, int threads) {
        int causes = problem.bores().size() + problem.springs().size();
        double[] times = times(horizon);
        ResponseCurve[][] curves = new ResponseCurve[causes][causes];
        try (WorkerTeam team = new WorkerTeam(threads)) {
            for (int first = 0; first < causes; first += LANES) {
                int[] lanes =
                        IntStream.range(first, Math.min(causes, first + LANES)).toArray();
                compute(new UnitResponseSystem(problem, lanes, RATE, team), lanes, times, accuracy, curves);
            }
        }
        return new UnitResponses(curves);
    }

    private static double[] times(double horizon) {
        int intervals = (int) Math.ceil(TIMES_PER_DECADE * Math.log10(horizon / FIRST_TIME));
        double[] times = new double[intervals + 1];
        Arrays.setAll(times, i -> FIRST_TIME * Math.pow(horizon / FIRST_TIME, (double) i / intervals));
        times[intervals] = horizon;
        return times;
    }

    private static void compute(
            UnitResponseSystem system, int[] lanes, double[] times, double accuracy, ResponseCurve[][] curves) {
        TrapezoidalBdf2 integrator =
                new TrapezoidalBdf2(system, new StepControl(accuracy, Double.POSITIVE_INFINITY, SMALLEST_STEP));
        int receptors = system.receptors();
        double[] drawdown = new double[system.size()];
        double[][][] values = new double[lanes.length][receptors][times.length];
        double[][][] rates = new double[lanes.length][receptors][times.length];
        double[][] atOnce = new double[lanes.length][];
        for (int lane = 0; lane < lanes.length; lane++) {
            atOnce[lane] = system.responses(lane, drawdown);
        }
        integrator.restart(system.firstStep());
        double day = 0;
        for (int i = 0; i < times.length; i++) {
            integrator.integrate(drawdown, day, times[i]);
            day = times[i];
            for (int lane = 0; lane < lanes.length; lane++) {
                double[] row = system.responses(lane, drawdown);
                double[] change = system.responseRates(lane, integrator.rate());
                for (int receptor = 0; receptor < receptors; receptor++) {
                    values[lane][receptor][i] = row[receptor];
                    rates[lane][receptor][i] = change[receptor];
                }
            }
        }
        for (int lane = 0; lane < lanes.length; lane++) {
            for (int receptor = 0; receptor < receptors; receptor++) {
                curves[receptor][lanes[lane]] =
                        new ResponseCurve(times, values[lane][receptor], rates[lane][receptor], atOnce[lane][receptor]);
            }
        }
    }

    /** Number of receptors, and of causes. */
    public int size() {
        return curves.length;
    }

    /**
     * Drawdown at a receptor by a unit discharge of a cause that has lasted for a time.
     *
     * @param receptor the receptor
     * @param cause the cause
     * @param time how long the discharge has lasted (d)
     * @return drawdown per discharge (d/m²)
     */
    public double at(int receptor, int cause, double time) {
        return curves[receptor][cause].at(time);
    }
}
