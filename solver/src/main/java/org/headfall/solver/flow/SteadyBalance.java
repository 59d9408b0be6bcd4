package org.headfall.solver.flow;

import java.util.Arrays;

/**
 * Makes the water balance of steady heads exact. Discharges that follow head meet their rules within a tolerance only; what
 * they are off by enters a balance of many years day by day.
 */
public final class SteadyBalance {

    private SteadyBalance() {}

    /**
     * Raises or lowers all heads evenly, by far less than the tolerance of rules, so that as much enters as is taken.
     *
     * @param problem the problem, whose heads something ties down
     * @param day the day (d)
     * @param discharges sum of what bores and springs take (m³/d)
     * @param head head of each cell (m above datum), changed
     */
    public static void close(FlowProblem problem, double day, double discharges, double[] head) {
        FlowEquation equation = new FlowEquation(problem);
        double[] sources = new double[head.length];
        double[] inflow = new double[head.length];
        equation.sources(day, sources);
        equation.netInflow(sources, head, inflow);
        double rise = (Arrays.stream(inflow).sum() - discharges)
                / Arrays.stream(equation.ties()).sum();
        boolean[] active = problem.aquifer().active();
        for (int cell = 0; cell < head.length; cell++) {
            head[cell] += active[cell] ? rise : 0;
        }
    }
}
