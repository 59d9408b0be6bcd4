package org.headfall.scenarios.limits;

import java.util.Optional;
import org.headfall.solver.bore.WaterColumn;

/**
 * Whether a limited value follows head at its place in proportion. Where it does, what bores do to it can be added up, and
 * searches for sites and rates keep the limit; any other is for the simulator to judge.
 */
public final class HeadProportion {

    private HeadProportion() {}

    /**
     * Why what bores do to a limited value cannot be added up.
     *
     * @param limit the limit
     * @return the reason in words that go on after its name; absent if it can
     */
    public static Optional<String> obstacle(Limit limit) {
        if (limit.quantity() instanceof LimitedQuantity.Distance) {
            return Optional.of("is about distances, not heads");
        }
        if (limit.place() instanceof LimitPlace.OnMap) {
            return Optional.of("is judged on the map");
        }
        if (!(limit.place() instanceof LimitPlace.AtStation) || limit.quantity() instanceof LimitedQuantity.Volume) {
            return Optional.of("counts volumes, not heads");
        }
        if (limit.period().afterTakingStops()) {
            return Optional.of("is judged after taking has stopped");
        }
        if (limit.comparison() instanceof Comparison.WithCase && limit.needsOtherRun()) {
            return Optional.of("compares with another case");
        }
        boolean follows = limit.quantity() instanceof LimitedQuantity.Drawdown
                || limit.quantity() instanceof LimitedQuantity.FloorLevel
                || limit.quantity() instanceof LimitedQuantity.Pressure
                || limit.quantity() instanceof LimitedQuantity.DeclineRate;
        return follows
                ? Optional.empty()
                : Optional.of("limits a " + limit.quantity().words() + ", which does not fall in proportion to head");
    }

    /**
     * By how much a limited value changes per metre of head at its place.
     *
     * @param quantity what is limited, without {@linkplain #obstacle obstacle}
     * @return change of the value, in its unit, per metre; of a rate of decline, per metre that head falls more in its time
     *     of one year
     */
    public static double perMetre(LimitedQuantity quantity) {
        WaterColumn column = WaterColumn.REFERENCE;
        // The pressure at the screen, and so at a gauge above it, changes alike whatever the temperature of the column.
        return quantity instanceof LimitedQuantity.Pressure
                ? column.gaugePressure(1, 0) - column.gaugePressure(0, 0)
                : 1;
    }
}
