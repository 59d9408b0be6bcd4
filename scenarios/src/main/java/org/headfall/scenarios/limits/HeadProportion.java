package org.headfall.scenarios.limits;

import java.util.Optional;
import org.headfall.solver.bore.WaterColumn;

/**
 * Whether a limited value follows head at its place in proportion. Where it does, what bores do to it can be added up, and
 * searches for sites and rates keep the limit; any other is for the simulator to judge. By how much it changes per metre is
 * part of its {@link LimitMargins}.
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
        Optional<String> ofKind = obstacleOfKind(limit);
        return ofKind.isPresent() || followsHead(limit.quantity()) ? ofKind : Optional.of(noProportion(limit));
    }

    /**
     * Why what bores do to a limited value cannot be added up even if springs that are limited flow: their discharge falls in
     * proportion to head as long as they do, and a spring that is to give something flows wherever its limit is kept.
     *
     * @param limit the limit
     * @return the reason in words that go on after its name; absent if it can
     */
    public static Optional<String> obstacleWhereSpringsFlow(Limit limit) {
        Optional<String> ofKind = obstacleOfKind(limit);
        return ofKind.isPresent() || followsHead(limit.quantity()) || isOfSpring(limit.quantity())
                ? ofKind
                : Optional.of(noProportion(limit));
    }

    /**
     * Why what bores do to a limited value cannot be added up even if springs and bores that are limited flow, and if what it is
     * compared with in another case is known and stays as it is: what is left of the flow of a bore by itself follows what head
     * it is offered.
     *
     * @param limit the limit
     * @return the reason in words that go on after its name; absent if it can
     */
    public static Optional<String> obstacleWhereWaterFlowsBesideKnownCases(Limit limit) {
        Optional<String> ofKind = obstacleBesideKnownCases(limit);
        return ofKind.isPresent()
                        || followsHead(limit.quantity())
                        || isOfSpring(limit.quantity())
                        || limit.quantity() instanceof LimitedQuantity.Flow
                ? ofKind
                : Optional.of(noProportion(limit));
    }

    /** Whether a limit measures an effect beside another case. */
    public static boolean isBesideCase(Limit limit) {
        return limit.comparison() instanceof Comparison.WithCase && limit.needsOtherRun();
    }

    private static Optional<String> obstacleOfKind(Limit limit) {
        Optional<String> obstacle = obstacleBesideKnownCases(limit);
        return obstacle.isEmpty() && isBesideCase(limit) ? Optional.of("compares with another case") : obstacle;
    }

    private static Optional<String> obstacleBesideKnownCases(Limit limit) {
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
        return isShare(limit.quantity()) && changesItsReference(limit.comparison())
                ? Optional.of("is a share of what taking changes too")
                : Optional.empty();
    }

    private static boolean isOfSpring(LimitedQuantity quantity) {
        return quantity instanceof LimitedQuantity.SpringDischarge
                || quantity instanceof LimitedQuantity.ShareOfSpringDischarge;
    }

    private static boolean followsHead(LimitedQuantity quantity) {
        return quantity instanceof LimitedQuantity.Drawdown
                || quantity instanceof LimitedQuantity.FloorLevel
                || quantity instanceof LimitedQuantity.Pressure
                || quantity instanceof LimitedQuantity.DeclineRate
                || quantity instanceof LimitedQuantity.ShareOfAvailableHead;
    }

    private static boolean isShare(LimitedQuantity quantity) {
        return quantity instanceof LimitedQuantity.ShareOfAvailableHead
                || quantity instanceof LimitedQuantity.ShareOfSpringDischarge;
    }

    /** Whether taking changes what a value is compared with: later days of the run itself. */
    private static boolean changesItsReference(Comparison comparison) {
        return comparison instanceof Comparison.OnDay || comparison instanceof Comparison.MeanOfYears;
    }

    private static String noProportion(Limit limit) {
        return "limits a " + limit.quantity().words() + ", which does not fall in proportion to head";
    }

    /** Change of a limited value that is made of head alone, in its unit, per metre; NaN of any other. */
    static double ofHead(LimitedQuantity quantity) {
        if (quantity instanceof LimitedQuantity.Pressure) {
            // The pressure at the screen, and so at a gauge above it, changes alike whatever the temperature of the
            // column.
            WaterColumn column = WaterColumn.REFERENCE;
            return column.gaugePressure(1, 0) - column.gaugePressure(0, 0);
        }
        return followsHead(quantity) && !isShare(quantity) ? 1 : Double.NaN;
    }
}
