package org.headfall.scenarios.scenario;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.headfall.scenarios.problem.Place;
import org.headfall.scenarios.spatial.Position;

/**
 * A bore.
 *
 * @param name its name, used once among bores, springs and protected points
 * @param position where it is
 * @param holder who holds the licence; empty if not given
 * @param licence what else the licence says of it
 * @param group proposed or existing
 * @param screenRadius radius at the face of the screen (m)
 * @param levels levels of its parts
 * @param wellLoss loss between aquifer and bore
 * @param completion how it is built
 * @param phases what it does from which date on, in order of the dates; off before the first
 * @param place where the document or the table gives it
 */
public record BoreSpecification(
        String name,
        Position position,
        String holder,
        BoreLicence licence,
        Group group,
        double screenRadius,
        Levels levels,
        WellLossSpecification wellLoss,
        BoreCompletion completion,
        List<Phase> phases,
        Place place) {
    /** Copies the list. */
    public BoreSpecification {
        phases = List.copyOf(phases);
    }

    /** The same bore, operated otherwise. */
    public BoreSpecification withPhases(List<Phase> others) {
        return new BoreSpecification(
                name, position, holder, licence, group, screenRadius, levels, wellLoss, completion, others, place);
    }

    /** Whether a bore is part of the proposal. */
    public enum Group {
        /** Part of the proposal. */
        PROPOSED,
        /** There already. */
        EXISTING
    }

    /**
     * Levels of the parts of a bore (m above datum), as far as they are known.
     *
     * @param ground ground beside the bore
     * @param outlet where water runs out when it flows by itself
     * @param pumpIntake intake of the pump
     * @param lowest lowest water level allowed while pumping
     */
    public record Levels(
            OptionalDouble ground, OptionalDouble outlet, OptionalDouble pumpIntake, OptionalDouble lowest) {
        /** Nothing is known. */
        public static final Levels UNKNOWN = new Levels(
                OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());

        /** The level below which pumping is cut back: the lowest allowed level or else the pump intake. */
        public OptionalDouble pumpingFloor() {
            return lowest.isPresent() ? lowest : pumpIntake;
        }
    }

    /**
     * Loss between aquifer and bore, {@code B Q + C Q^p}.
     *
     * @param linear B (d/m2), without the part of the aquifer
     * @param turbulent C (d2/m5 for p = 2)
     * @param exponent p (-)
     */
    public record WellLossSpecification(double linear, double turbulent, double exponent) {}

    /**
     * What a bore does from a date on.
     *
     * @param from the date; empty for "from before the period on"
     * @param operation what it does
     * @param season the part of every year in which it does so, off in the rest; empty for the whole year
     */
    public record Phase(Optional<LocalDate> from, BoreOperation operation, Optional<Season> season) {
        /**
         * All the year.
         *
         * @param from the date
         * @param operation what the bore does
         */
        public Phase(Optional<LocalDate> from, BoreOperation operation) {
            this(from, operation, Optional.empty());
        }
    }
}
