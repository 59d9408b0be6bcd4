package org.headfall.solver.flow;

import org.headfall.solver.aquifer.Spring;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.Operation;

/**
 * Rule of one bore or spring at one moment: the head that the aquifer must offer at its wall for a discharge Q is
 * {@code offset + linear Q + quadratic Q²}, and Q lies between {@code least} and {@code most}. At the bounds the
 * aquifer may offer less (at {@code least}) or more (at {@code most}).
 *
 * @param offset head needed at no discharge (m above datum); of no meaning where the rate is given
 * @param linear head per discharge (d/m²), not negative
 * @param quadratic head per squared discharge (d²/m⁵), not negative
 * @param least smallest discharge (m³/d)
 * @param most largest discharge (m³/d); equal to {@code least} where the rate does not depend on head
 */
record DischargeRule(double offset, double linear, double quadratic, double least, double most) {

    private static final DischargeRule SHUT = given(0);

    /** A rate that does not depend on head. */
    static DischargeRule given(double rate) {
        return new DischargeRule(0, 0, 0, rate, rate);
    }

    static DischargeRule of(Spring spring) {
        return new DischargeRule(spring.outlet(), 1 / spring.conductance(), 0, 0, Double.POSITIVE_INFINITY);
    }

    static DischargeRule of(Bore bore, double day) {
        Operation operation = bore.operationAt(day);
        double linear = bore.wellLoss().linear();
        double quadratic = bore.wellLoss().quadratic();
        if (operation instanceof Operation.FreeFlow flow) {
            return new DischargeRule(flow.outletLevel(), linear, quadratic, 0, Double.POSITIVE_INFINITY);
        }
        if (operation instanceof Operation.PumpedRate pumped) {
            double rate = pumped.rate().at(day);
            return pumped.lowestLevel().isPresent() && rate > 0
                    ? new DischargeRule(pumped.lowestLevel().getAsDouble(), linear, quadratic, 0, rate)
                    : given(rate);
        }
        return SHUT;
    }

    /** Whether the discharge depends on head. */
    boolean dependsOnHead() {
        return most > least;
    }

    /** Head needed at the wall for a discharge (m above datum). */
    double neededHead(double discharge) {
        return offset + discharge * (linear + quadratic * discharge);
    }

    /** Increase of the needed head with discharge (d/m²). */
    double slope(double discharge) {
        return linear + 2 * quadratic * discharge;
    }

    /** The discharge within the bounds that is nearest to a value (m³/d). */
    double clamp(double discharge) {
        return Math.max(least, Math.min(most, discharge));
    }
}
