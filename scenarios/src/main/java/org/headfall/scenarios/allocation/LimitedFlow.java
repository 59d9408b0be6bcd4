package org.headfall.scenarios.allocation;

import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitedQuantity;
import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.solver.bore.NeededHead;

/**
 * The least flow of a bore that flows by itself and is none of those whose rates are looked for.
 *
 * <p>Neither its flow nor head at its wall alone can be followed: flow stops falling where it ends, and head at the wall of a bore
 * without losses stays at its outlet as long as it flows. Their sum does both, {@code head + perDischarge * flow}, and is what head
 * would come to if the bore gave nothing. What is left is counted by it, as flow in which the limit itself and small changes there are
 * exact; a margin far from the limit is told as flow by {@link #left}.
 *
 * @param limit the limit
 * @param needed head that the bore needs at its wall for a flow
 * @param perDischarge fall of head at its wall by a unit of its own discharge (d/m²), positive
 */
record LimitedFlow(Limit limit, NeededHead needed, double perDischarge) implements Requirement.OnLimit {

    private double least() {
        return DischargeUnit.LITRES_PER_SECOND.toCubicMetresPerDay(((LimitedQuantity.Flow) limit.quantity()).atLeast());
    }

    /** By how much the flow at the limit falls per metre of head that is offered less (L/s per m). */
    double perMetre() {
        return DischargeUnit.LITRES_PER_SECOND.of(1 / (needed.slope(least()) + perDischarge));
    }

    /**
     * What is left, counted as flow.
     *
     * @param head head at the wall (m above datum)
     * @param discharge what the bore gives (m³/d)
     * @return L/s, negative where the bore gives less than the limit wants
     */
    double margin(double head, double discharge) {
        return perMetre() * (head - needed.at(least()) + perDischarge * (discharge - least()));
    }

    /** Flow that is left of a margin, at the least all that the limit wants lacking (L/s). */
    double left(double margin) {
        double offered = needed.at(least()) + perDischarge * least() + margin / perMetre();
        return DischargeUnit.LITRES_PER_SECOND.of(
                needed.discharge(offered, perDischarge, Double.POSITIVE_INFINITY) - least());
    }
}
