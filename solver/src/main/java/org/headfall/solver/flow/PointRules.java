package org.headfall.solver.flow;

import java.util.Arrays;
import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.WellLoss;

/** Rules of all bores and springs through time: bores first, then springs, in the order of the problem. */
public final class PointRules {

    private final FlowProblem problem;
    private final WellLoss[] losses;
    private final DischargeRule[] springs;

    /**
     * Rules of a problem.
     *
     * @param problem the problem
     */
    public PointRules(FlowProblem problem) {
        this.problem = problem;
        Aquifer aquifer = problem.aquifer();
        losses = problem.bores().stream()
                .map(bore -> bore.lossIn(transmissivity(aquifer, bore)))
                .toArray(WellLoss[]::new);
        springs = problem.springs().stream().map(DischargeRule::of).toArray(DischargeRule[]::new);
    }

    private static double transmissivity(Aquifer aquifer, Bore bore) {
        int cell = aquifer.grid().locate(bore.x(), bore.y());
        return Math.sqrt(aquifer.transmissivityX()[cell] * aquifer.transmissivityY()[cell]);
    }

    /** Rules in force at a day. */
    DischargeRule[] at(double day) {
        DischargeRule[] rules = new DischargeRule[losses.length + springs.length];
        for (int i = 0; i < losses.length; i++) {
            rules[i] = DischargeRule.of(problem.bores().get(i), losses[i], day);
        }
        System.arraycopy(springs, 0, rules, losses.length, springs.length);
        return rules;
    }

    /** Level of the water in a bore (m above datum) behind a head at its wall. */
    public double levelInBore(int bore, double wallHead, double discharge) {
        return problem.bores().get(bore).column().level(wallHead - losses[bore].at(discharge));
    }

    /**
     * Discharge asked of each point at a moment.
     *
     * @param day the moment (d)
     * @return discharge (m³/d), NaN where the rule leaves it to head
     */
    public double[] asked(double day) {
        return Arrays.stream(at(day)).mapToDouble(DischargeRule::asked).toArray();
    }

    /**
     * Whether the discharge of each point depends on head at a moment.
     *
     * @param day the moment (d)
     * @return one answer a point
     */
    public boolean[] dependOnHead(double day) {
        DischargeRule[] rules = at(day);
        boolean[] depend = new boolean[rules.length];
        for (int i = 0; i < depend.length; i++) {
            depend[i] = rules[i].dependsOnHead();
        }
        return depend;
    }

    /**
     * Discharges of some points, met together with the heads they cause, for whoever knows the heads that the aquifer
     * offers without solving for them.
     *
     * @param day moment of the rules (d)
     * @param chosen the points
     * @param response fall of head at the wall of each chosen point by a unit discharge of each (d/m²), symmetric
     * @param offered head at the wall of each chosen point if none of them discharged (m above datum)
     * @param discharge in: a guess; out: discharge of each chosen point (m³/d)
     * @param tolerance largest error of head at a wall (m)
     * @throws IllegalStateException if the rules cannot be met
     */
    public void meet(
            double day, int[] chosen, double[][] response, double[] offered, double[] discharge, double tolerance) {
        DischargeRule[] all = at(day);
        DischargeRule[] rules = new DischargeRule[chosen.length];
        for (int i = 0; i < chosen.length; i++) {
            rules[i] = all[chosen[i]];
        }
        new DischargeEquilibrium(rules, response, offered, tolerance).solve(discharge);
    }
}
