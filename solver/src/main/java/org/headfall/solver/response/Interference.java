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
     * @return drawdown (m): {@code [receptor][cause]}, bores first, then springs
     */
    public double[][] drawdown(double day) {
        int points = history.points();
        double[][] drawdown = new double[points][points];
        for (int cause = 0; cause < points; cause++) {
            double former = startRates[cause];
            for (int step = 0; step < history.steps() && history.startOf(step) < day; step++) {
                double change = history.rate(step, cause) - former;
                former = history.rate(step, cause);
                if (change != 0) {
                    double time = day - history.startOf(step);
                    for (int receptor = 0; receptor < points; receptor++) {
                        drawdown[receptor][cause] += change * responses.at(receptor, cause, time);
                    }
                }
            }
        }
        return drawdown;
    }
}
