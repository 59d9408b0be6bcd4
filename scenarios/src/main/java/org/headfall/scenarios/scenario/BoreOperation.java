package org.headfall.scenarios.scenario;

import java.util.List;
import java.util.Optional;

/** What a bore does. */
public sealed interface BoreOperation {
    /**
     * Pumped at a rate.
     *
     * @param rate rate (m3/d), negative for injection
     */
    record Pumped(TimeCourse rate) implements BoreOperation {}

    /** Flows by itself while the head stands above its outlet. */
    record FreeFlow() implements BoreOperation {}

    /**
     * Pumped as the pump's curve allows.
     *
     * @param flows rates of the points of the curve (m3/d), from 0
     * @param heads head added at each (m)
     * @param deliveryLevel level to which the water is lifted (m above datum)
     * @param deliveryHead pressure head needed there (m)
     * @param riser what the water rises through, if its friction counts
     */
    record PumpedByCurve(
            List<Double> flows,
            List<Double> heads,
            double deliveryLevel,
            double deliveryHead,
            Optional<BoreCompletion.PipeSpecification> riser)
            implements BoreOperation {
        /** Copies the lists. */
        public PumpedByCurve {
            flows = List.copyOf(flows);
            heads = List.copyOf(heads);
        }
    }

    /** Shut, capped, or with the pump off. */
    record Off() implements BoreOperation {}
}
