package org.headfall.solver.flow;

import org.headfall.solver.wording.PlainNumber;

/** The rules of bores and springs cannot be met together with the aquifer. */
public final class UnmetRuleException extends IllegalStateException {

    private static final long serialVersionUID = 1;

    private final String point;

    /**
     * What could not be met.
     *
     * @param point name of the bore or spring farthest from its rule
     * @param discharge its discharge at last (m³/d)
     * @param missing head needed at its wall less head there (m)
     * @param allowed largest difference that is allowed (m)
     */
    public UnmetRuleException(String point, double discharge, double missing, double allowed) {
        super("the rule of '" + point + "' cannot be met: at " + PlainNumber.about(discharge)
                + " m3/d the head needed at its wall and the"
                + " head there differ by " + PlainNumber.about(missing) + " m, allowed " + PlainNumber.of(allowed)
                + " m; check its levels, its well loss,"
                + " casing and pump curve, and the transmissivity around it");
        this.point = point;
    }

    /** Name of the bore or spring. */
    public String point() {
        return point;
    }
}
