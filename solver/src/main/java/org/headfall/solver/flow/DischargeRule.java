package org.headfall.solver.flow;

import org.headfall.solver.aquifer.Spring;
import org.headfall.solver.bore.Bore;
import org.headfall.solver.bore.NeededHead;
import org.headfall.solver.bore.NeededLevel;
import org.headfall.solver.bore.Operation;
import org.headfall.solver.bore.WaterColumn;
import org.headfall.solver.bore.WellLoss;

/**
 * Rule of one bore or spring at one moment: the head that the aquifer must offer at its wall for a discharge, and the
 * bounds of the discharge. At the bounds the aquifer may offer less (at {@code least}) or more (at {@code most}).
 *
 * @param name of the bore or spring, for messages
 * @param needed head needed at the wall; of no meaning where the rate is given
 * @param least smallest discharge (m³/d)
 * @param most largest discharge (m³/d); equal to {@code least} where the rate does not depend on head
 * @param asked discharge asked for (m³/d), NaN where the rule leaves it to head
 */
record DischargeRule(String name, NeededHead needed, double least, double most, double asked) {

    private static final NeededHead OF_GIVEN_RATE =
            new NeededHead(NeededLevel.constant(0), WellLoss.NONE, WaterColumn.REFERENCE);

    /** A rate that does not depend on head. */
    static DischargeRule given(String name, double rate) {
        return new DischargeRule(name, OF_GIVEN_RATE, rate, rate, rate);
    }

    static DischargeRule of(Spring spring) {
        NeededHead needed = new NeededHead(
                NeededLevel.constant(spring.outlet()),
                new WellLoss(1 / spring.conductance(), 0),
                WaterColumn.REFERENCE);
        return new DischargeRule(spring.name(), needed, 0, Double.POSITIVE_INFINITY, Double.NaN);
    }

    /**
     * Rule of a bore.
     *
     * @param bore the bore
     * @param loss its loss between wall and inside
     * @param day the moment (d)
     */
    static DischargeRule of(Bore bore, WellLoss loss, double day) {
        Operation operation = bore.operationAt(day);
        if (operation instanceof Operation.FreeFlow flow) {
            NeededHead needed = new NeededHead(flow, loss, bore.column());
            return new DischargeRule(bore.name(), needed, 0, Double.POSITIVE_INFINITY, Double.NaN);
        }
        if (operation instanceof Operation.PumpedByCurve pumped) {
            NeededHead needed = new NeededHead(pumped, loss, bore.column());
            return new DischargeRule(bore.name(), needed, 0, pumped.curve().largestFlow(), Double.NaN);
        }
        if (operation instanceof Operation.PumpedRate pumped) {
            double rate = pumped.rate().at(day);
            return rate > 0 && pumped.lowestLevel().isPresent()
                    ? new DischargeRule(
                            bore.name(),
                            new NeededHead(pumped.neededLevel().orElseThrow(), loss, bore.column()),
                            0,
                            rate,
                            rate)
                    : given(bore.name(), rate);
        }
        return given(bore.name(), 0);
    }

    /** Whether the discharge depends on head. */
    boolean dependsOnHead() {
        return most > least;
    }

    /** Head needed at the wall for a discharge (m above datum). */
    double neededHead(double discharge) {
        return needed.at(discharge);
    }

    /** Increase of the needed head with discharge (d/m²). */
    double slope(double discharge) {
        return needed.slope(discharge);
    }

    /** The discharge within the bounds that is nearest to a value (m³/d). */
    double clamp(double discharge) {
        return Math.max(least, Math.min(most, discharge));
    }
}
