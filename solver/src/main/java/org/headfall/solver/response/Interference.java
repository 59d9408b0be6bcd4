package org.headfall.solver.response;

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
     * @param day the day (d), within the run
     * @return drawdown (m): {@code [receptor][cause]}, receptors and causes in the order of the responses
     */
    public double[][] drawdown(double day) {
        double[][] drawdown = new double[responses.receptors()][history.points()];
        for (int cause = 0; cause < history.points(); cause++) {
            double[] column = drawdownBy(cause, day);
            for (int receptor = 0; receptor < column.length; receptor++) {
                drawdown[receptor][cause] = column[receptor];
            }
        }
        return drawdown;
    }

    private double[] drawdownBy(int cause, double day) {
        double[] drawdown = new double[responses.receptors()];
        double[] amounts = new double[history.points()];
        double former = startRates[cause];
        double formerGrowth = 0;
        for (int step = 0; step < history.steps() && history.startOf(step) < day; step++) {
            double end = history.straightenedRateAtEnd(step, cause);
            double begin = history.startsAnew(step) ? end : former;
            double growth = (end - begin) / (history.startOf(step + 1) - history.startOf(step));
            double time = day - history.startOf(step);
            amounts[cause] = begin - former;
            responses.table().addSteps(time, amounts, drawdown);
            amounts[cause] = growth - formerGrowth;
            responses.table().addRamps(time, amounts, drawdown);
            former = end;
            formerGrowth = growth;
        }
        return drawdown;
    }
}
