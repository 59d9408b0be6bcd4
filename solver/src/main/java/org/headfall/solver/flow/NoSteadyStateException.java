package org.headfall.solver.flow;

import java.util.Arrays;
import java.util.stream.Collectors;
import org.headfall.solver.wording.PlainNumber;

/** Nothing ties the heads of an aquifer down, so it has no steady state. */
public final class NoSteadyStateException extends IllegalStateException {

    private static final long serialVersionUID = 1L;

    /**
     * What the state would have to bear.
     *
     * @param rules rules of bores and springs
     * @param day day of which the discharges are asked for (d)
     */
    public NoSteadyStateException(PointRules rules, double day) {
        super("there is no steady state: every side of the aquifer, or of a part that stands alone, is closed or has a"
                + " given flow and nothing leaks; asked for are "
                + asked(rules.at(day)) + "; give a boundary a head, or start from given heads");
    }

    /** Who takes how much, such as "700.0 m3/d by 'Mulga 3'". */
    private static String asked(DischargeRule[] rules) {
        String taken = Arrays.stream(rules)
                .filter(rule -> rule.dependsOnHead() || rule.most() != 0)
                .map(rule -> (Double.isNaN(rule.asked()) ? "what head gives" : PlainNumber.of(rule.asked()) + " m3/d")
                        + " by '" + rule.name() + "'")
                .collect(Collectors.joining(", "));
        return taken.isEmpty() ? "no discharges" : taken;
    }
}
