package org.headfall.scenarios.siting;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleBinaryOperator;
import org.headfall.scenarios.limits.Comparison;
import org.headfall.scenarios.limits.Limit;
import org.headfall.scenarios.limits.LimitPlace;
import org.headfall.scenarios.limits.LimitedQuantity;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.scenario.SitingSpecification;

/**
 * Limits of the document on distance that a new bore has to keep: one of the bores whose distance from a place is limited, for
 * it is part of the proposal and of its holder. Where a bore would stand too near nothing may be taken, however little.
 */
final class DistanceLimits {

    private final List<Counted> counted;

    /** One limit: the distance of a point to its place (m), the least allowed (m), and the number of its name. */
    private record Counted(DoubleBinaryOperator distance, double atLeast, int reason) {}

    private DistanceLimits(List<Counted> counted) {
        this.counted = counted;
    }

    /**
     * The limits of a plan that count for new bores.
     *
     * @param plan the plan
     * @param siting what is looked for
     * @param ruling takes the names of the limits
     */
    static DistanceLimits of(RunPlan plan, SitingSpecification siting, Ruling ruling) {
        List<Counted> counted = new ArrayList<>();
        for (Limit limit : plan.limits()) {
            if (limit.quantity() instanceof LimitedQuantity.Distance quantity) {
                Optional<DoubleBinaryOperator> distance = toPlace(limit, plan);
                if (distance.isPresent() && countsNewBores(limit, siting)) {
                    counted.add(new Counted(distance.get(), quantity.atLeast(), ruling.add(limit.nameAndPlace())));
                }
            }
        }
        return new DistanceLimits(counted);
    }

    /**
     * Why a limit on distance does not count for new bores.
     *
     * @param limit the limit
     * @param plan the plan that it belongs to
     * @param siting whose bores are looked for
     * @return the reason in words that go on after its name; absent if it counts
     */
    static Optional<String> obstacle(Limit limit, RunPlan plan, SitingSpecification siting) {
        if (!countsNewBores(limit, siting)) {
            return Optional.of("is about the distance of " + limit.comparison().cause() + " only");
        }
        return toPlace(limit, plan).isPresent() ? Optional.empty() : Optional.of("is about a place that is not there");
    }

    private static boolean countsNewBores(Limit limit, SitingSpecification siting) {
        return limit.comparison() instanceof Comparison.WithoutAnyBore
                || limit.comparison() instanceof Comparison.WithoutProposedBores
                || (limit.comparison() instanceof Comparison.WithoutHolder of
                        && of.holder().equals(siting.holder()));
    }

    /** Distance of a point to the place of a limit; absent if there is no such place. */
    private static Optional<DoubleBinaryOperator> toPlace(Limit limit, RunPlan plan) {
        if (limit.place() instanceof LimitPlace.OnMap map) {
            return Optional.ofNullable(plan.mapPlaces().parts().get(map.words()))
                    .map(part -> part::distance);
        }
        RunDescription run = plan.description();
        int index = run.stationIndex(limit.station());
        if (index < 0) {
            return Optional.empty();
        }
        Station place = run.stations().get(index);
        return Optional.of((x, y) -> Math.hypot(x - place.x(), y - place.y()));
    }

    /** Lets nothing be taken in cells at whose centre a bore would stand too near. */
    void lower(RunDescription run, RateBounds bounds) {
        for (Counted limit : counted) {
            for (int cell = 0; cell < bounds.rate().length; cell++) {
                double x = run.grid().centreX(cell);
                double y = run.grid().centreY(cell);
                if (limit.distance.applyAsDouble(x, y) < limit.atLeast) {
                    bounds.lower(cell, 0, limit.reason);
                }
            }
        }
    }
}
