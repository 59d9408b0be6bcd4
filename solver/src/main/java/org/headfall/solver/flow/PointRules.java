package org.headfall.solver.flow;

import org.headfall.solver.aquifer.Aquifer;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.WellLoss;

/** Rules of all bores and springs through time: bores first, then springs, in the order of the problem. */
final class PointRules {

    private final FlowProblem problem;
    private final WellLoss[] losses;
    private final DischargeRule[] springs;

    PointRules(FlowProblem problem) {
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
    double levelInBore(int bore, double wallHead, double discharge) {
        return problem.bores().get(bore).column().level(wallHead - losses[bore].at(discharge));
    }
}
