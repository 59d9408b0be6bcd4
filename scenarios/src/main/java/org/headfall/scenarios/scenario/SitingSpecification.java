package org.headfall.scenarios.scenario;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.headfall.scenarios.scenario.BoreSpecification.WellLossSpecification;

/**
 * Where new bores are looked for, and what they must keep.
 *
 * @param rate wanted rate of each new bore (m3/d); if empty, sites are ranked by the largest rate they allow
 * @param sites how many sites are chosen, at least one
 * @param days how long a new bore takes from the start of the period on (d)
 * @param holder who holds the new bores; empty if not given
 * @param screenRadius radius at the face of the screen (m)
 * @param wellLoss loss between aquifer and bore
 * @param largestRate most that one bore may take (m3/d)
 * @param lifting levels that pumping must keep, and what lifting takes
 * @param deepestBore greatest depth of a bore from the ground to the bottom of the aquifer (m)
 * @param distances distances that a new bore must keep
 * @param excluded polygons within which no bore may stand
 */
public record SitingSpecification(
        OptionalDouble rate,
        int sites,
        double days,
        String holder,
        double screenRadius,
        WellLossSpecification wellLoss,
        double largestRate,
        Lifting lifting,
        OptionalDouble deepestBore,
        Distances distances,
        Optional<Area> excluded) {

    /** The most sites that are chosen. */
    public static final int MOST_SITES = 50;

    /**
     * Levels that pumping must keep, and what lifting takes.
     *
     * @param deepestLevel greatest depth of the level in the bore below the ground (m)
     * @param aboveTop how far that level stays above the aquifer top (m)
     * @param deliveryHead head above the ground that the water is lifted to (m)
     * @param largestLift greatest lift from the level in the bore (m)
     * @param efficiency part of the energy that lifts water (-), from more than 0 to 1
     */
    public record Lifting(
            OptionalDouble deepestLevel,
            double aboveTop,
            double deliveryHead,
            OptionalDouble largestLift,
            double efficiency) {}

    /**
     * Distances that a new bore must keep.
     *
     * @param toBores to other bores, by how much the new one takes
     * @param toSprings to springs, by how much the new one takes
     * @param toSides to the rim of the aquifer, the sides of the grid or cells without aquifer (m)
     */
    public record Distances(List<DistanceClass> toBores, List<DistanceClass> toSprings, double toSides) {
        /** Copies the lists. */
        public Distances {
            toBores = List.copyOf(toBores);
            toSprings = List.copyOf(toSprings);
        }
    }

    /**
     * A distance that must be kept by bores that take up to some rate.
     *
     * @param upTo the rate (m3/d); infinite for all that take more than the classes before
     * @param atLeast the distance (m)
     */
    public record DistanceClass(double upTo, double atLeast) {}
}
