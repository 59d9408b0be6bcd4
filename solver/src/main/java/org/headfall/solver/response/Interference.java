package org.headfall.solver.response;

import java.util.Arrays;
import org.headfall.solver.flow.RateHistory;

/**
 * Splits the drawdown of a run by cause: what each bore and spring, by the change of its discharge since the start,
 * does at each bore and spring. What is left of a run's drawdown comes from boundaries and recharge that change, from a
 * start that was not at rest, and from the interpolation of the responses.
 */
public final class Interference {

    private final UnitResponses responses;
    private final RateHistory history;
    private final double[] startRates;

    /**
     * Split of a run.
     *
     * @param responses responses of the run's problem
     * @param history discharges of the run
     * @param startRates discharge of each bore and spring in the state the run started from (m³/d)
     */
    public Interference(UnitResponses responses, RateHistory history, double[] startRates) {
        this.responses = responses;
        this.history = history;
        this.startRates = startRates.clone();
    }

    /**
     * Drawdown at every receptor by every cause.
     *
     * @param days days (d) within the run, increasing
     * @return drawdown (m): {@code [day][receptor][cause]}, receptors and causes in the order of the responses
     */
    public double[][][] drawdown(double[] days) {
        double[][][] split = new double[days.length][responses.receptors()][history.points()];
        Superposition superposition = new Superposition(responses.modes());
        double[] former = new double[history.points()];
        int next = 0;
        for (int step = 0; step < history.steps(); step++) {
            double[] end = new double[history.points()];
            for (int cause = 0; cause < end.length; cause++) {
                end[cause] = history.straightenedRateAtEnd(step, cause) - startRates[cause];
            }
            double[] begin = history.startsAnew(step) ? end : former;
            while (next < days.length && days[next] <= history.startOf(step + 1)) {
                if (days[next] > history.startOf(step)) {
                    partOfStep(superposition, step, days[next], begin, end);
                    read(superposition, split[next]);
                }
                next++;
            }
            superposition.lookAhead(history.startOf(step + 1) - history.startOf(step), begin, end);
            superposition.accept();
            former = end;
        }
        return split;
    }

    /** Looks ahead to a day within a step. */
    private void partOfStep(Superposition superposition, int step, double day, double[] begin, double[] end) {
        double length = day - history.startOf(step);
        double share = length / (history.startOf(step + 1) - history.startOf(step));
        double[] there = new double[end.length];
        Arrays.setAll(there, cause -> begin[cause] + share * (end[cause] - begin[cause]));
        superposition.lookAhead(length, begin, there);
    }

    private static void read(Superposition superposition, double[][] split) {
        for (int receptor = 0; receptor < split.length; receptor++) {
            for (int cause = 0; cause < split[receptor].length; cause++) {
                split[receptor][cause] = superposition.drawdown(receptor, cause);
            }
        }
    }
}
