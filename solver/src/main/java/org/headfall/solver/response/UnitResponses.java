package org.headfall.solver.response;

import java.util.Arrays;
import java.util.List;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.TransferValues;
import org.headfall.solver.linear.WorkerTeam;
import org.headfall.solver.nearfield.ObservedHead;

/**
 * Step responses to every bore and spring, the causes, at every receptor: bores first, then springs, then points
 * without discharge. In Laplace space the problem is solved for some shifts, and reduced models that meet these solutions
 * give the responses at all times. Immutable.
 */
public final class UnitResponses {

    private static final double FIRST_TIME = 1e-3;
    private static final int TIMES_PER_DECADE = 12;
    private static final int SHIFTS_PER_DECADE = 3;

    /** Smallest shift as a share of the inverse of the horizon, so that the last times are met as well as the others. */
    private static final double SLOWEST = 0.3;

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
     * @param threads threads of the linear solver
     * @return the responses
     */
    public static UnitResponses of(FlowProblem problem, List<ObservedHead> points, double horizon, int threads) {
        double[] times = times(horizon);
        TransferValues transfer;
        try (WorkerTeam team = new WorkerTeam(threads)) {
            transfer = new TransferValues(problem, points, shifts(horizon), team);
        }
        int causes = transfer.causes();
        int receptors = transfer.receptors();
        double[] atOnce = new double[causes * receptors];
        double[][] values = new double[times.length][causes * receptors];
        double[][] rates = new double[times.length][causes * receptors];
        ReducedModels models = new ReducedModels(transfer);
        for (int receptor = 0; receptor < receptors; receptor++) {
            for (int cause = 0; cause < Math.min(receptor + 1, causes); cause++) {
                StepResponse response = models.response(receptor, cause);
                int curve = cause * receptors + receptor;
                // What this does at a cause, the cause does here.
                int mirrored = receptor < causes ? receptor * receptors + cause : curve;
                atOnce[curve] = transfer.atOnce(receptor, cause);
                atOnce[mirrored] = atOnce[curve];
                for (int i = 0; i < times.length; i++) {
                    values[i][curve] = atOnce[curve] + response.value(times[i]);
                    values[i][mirrored] = values[i][curve];
                    rates[i][curve] = response.rate(times[i]);
                    rates[i][mirrored] = rates[i][curve];
                }
            }
        }
        return new UnitResponses(new ResponseTable(receptors, times, atOnce, values, rates));
    }

    private static double[] times(double horizon) {
        int intervals = (int) Math.ceil(TIMES_PER_DECADE * Math.log10(horizon / FIRST_TIME));
        double[] times = evenOverLogarithm(FIRST_TIME, horizon, intervals);
        times[intervals] = horizon;
        return times;
    }

    /** From the fastest change wanted to the slowest, so that a solve has a good guess in the ones before. */
    private static double[] shifts(double horizon) {
        double last = SLOWEST / horizon;
        int intervals = (int) Math.ceil(SHIFTS_PER_DECADE * -Math.log10(FIRST_TIME * last));
        return evenOverLogarithm(1 / FIRST_TIME, last, intervals);
    }

    private static double[] evenOverLogarithm(double first, double last, int intervals) {
        double[] values = new double[intervals + 1];
        Arrays.setAll(values, i -> first * Math.pow(last / first, (double) i / intervals));
        return values;
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
