package org.headfall.scenarios.scenario;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import org.headfall.scenarios.problem.Place;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Geometry;

/**
 * Something that must not happen, in the seven parts that limits in law have.
 *
 * @param name what the limit is called
 * @param quantity what is limited, with its bound
 * @param at the places that it holds for
 * @param cause whose taking counts
 * @param comparedWith what its effect is measured from
 * @param when when it has to hold
 * @param howSure probability with which it has to hold; absent for the best estimate
 * @param text the clause as the licence words it; empty if not given
 * @param place where the document gives it
 */
public record LimitSpecification(
        String name,
        Quantity quantity,
        List<At> at,
        BoreSelection cause,
        Reference comparedWith,
        When when,
        OptionalDouble howSure,
        String text,
        Place place) {
    /** Copies the list. */
    public LimitSpecification {
        at = List.copyOf(at);
    }

    /** What is limited, with its bound. */
    public sealed interface Quantity {}

    /**
     * Head of what is compared with less head of the run.
     *
     * @param atMost bound (m)
     */
    public record Drawdown(double atMost) implements Quantity {}

    /**
     * Head; of a bore, that of the aquifer at its wall.
     *
     * @param atLeast bound (m above datum)
     */
    public record FloorLevel(double atLeast) implements Quantity {}

    /**
     * Pressure that a gauge on a bore shows.
     *
     * @param atLeast bound (kPa)
     * @param gaugeLevel level of the gauge (m above datum); absent for the ground beside the bore
     */
    public record Pressure(double atLeast, OptionalDouble gaugeLevel) implements Quantity {}

    /**
     * Fall of head over time, as a mean over some years.
     *
     * @param atMost bound (m/d)
     * @param overYears number of years
     */
    public record DeclineRate(double atMost, int overYears) implements Quantity {}

    /**
     * What remains of the height of head above a level, as a share of what it is compared with.
     *
     * @param atLeast bound (-)
     * @param above the level
     */
    public record ShareOfAvailableHead(double atLeast, Base above) implements Quantity {}

    /**
     * Discharge of a bore that flows by itself.
     *
     * @param atLeast bound (m3/d)
     */
    public record Flow(double atLeast) implements Quantity {}

    /**
     * Discharge of a spring.
     *
     * @param atLeast bound (m3/d)
     */
    public record SpringDischarge(double atLeast) implements Quantity {}

    /**
     * Discharge of a spring, as a share of what it is compared with.
     *
     * @param atLeast bound (-)
     */
    public record ShareOfSpringDischarge(double atLeast) implements Quantity {}

    /**
     * Water taken in a water year.
     *
     * @param atMost bound (m3)
     */
    public record Volume(double atMost) implements Quantity {}

    /**
     * Distance of the bores of the cause from the place.
     *
     * @param atLeast bound (m)
     */
    public record Distance(double atLeast) implements Quantity {}

    /** A level from which available head is counted. */
    public sealed interface Base {}

    /** Levels that bores and the aquifer have. */
    public enum OwnLevel implements Base {
        /** Top of the aquifer. */
        AQUIFER_TOP,
        /** Intake of the pump. */
        PUMP_INTAKE,
        /** Outlet of a bore or spring. */
        OUTLET
    }

    /**
     * A level for all places.
     *
     * @param level the level (m above datum)
     */
    public record GivenLevel(double level) implements Base {}

    /** Where a limit holds. */
    public sealed interface At {}

    /**
     * A bore, spring or protected point. What makes two of them equal is written out, since Java takes long to build that
     * of a record.
     *
     * @param name its name
     */
    public record NamedPlace(String name) implements At {
        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof NamedPlace place && name.equals(place.name);
        }

        @Override
        public int hashCode() {
            return name.hashCode();
        }
    }

    /**
     * Each of some bores; of a volume, all of them together.
     *
     * @param bores the bores
     */
    public record Bores(BoreSelection bores) implements At {}

    /**
     * Polygons or lines.
     *
     * @param file the GeoJSON file with them
     * @param name the name that their features have; empty for all of the file
     * @param shapes the shapes (m), at least one; shared, must not be changed
     */
    public record Shapes(SpatialFile file, String name, List<Geometry> shapes) implements At {
        /** Copies the list. */
        public Shapes {
            shapes = List.copyOf(shapes);
        }
    }

    /** Every cell of the aquifer. */
    public record EveryCell() implements At {}

    /** What an effect is measured from. */
    public sealed interface Reference {}

    /** Nothing: the value itself is limited. */
    public record Nothing() implements Reference {}

    /** The same run without the bores of the cause. */
    public record WithoutThem() implements Reference {}

    /** The start of the run. */
    public record TheStart() implements Reference {}

    /** A steady state without any bore. */
    public record BeforeAnyTaking() implements Reference {}

    /**
     * A date of the run.
     *
     * @param date the date
     */
    public record OnDate(LocalDate date) implements Reference {}

    /**
     * Mean of some calendar years of the run.
     *
     * @param first the first of them
     * @param last the last of them
     */
    public record MeanOfYears(int first, int last) implements Reference {
        /** First day. */
        public LocalDate begins() {
            return LocalDate.of(first, 1, 1);
        }

        /** First day after them. */
        public LocalDate ends() {
            return LocalDate.of(last + 1, 1, 1);
        }
    }

    /**
     * Another case of the document.
     *
     * @param name its name
     */
    public record OtherCase(String name) implements Reference {}

    /**
     * Part of the period.
     *
     * @param fromDay first day (d since the start of the period)
     * @param toDay last day; infinite for ever
     * @param afterTakingStops whether it counts on after the period, when the taking of the cause has stopped
     */
    public record When(double fromDay, double toDay, boolean afterTakingStops) {
        /** At all times of the period. */
        public static final When EVER = new When(0, Double.POSITIVE_INFINITY);

        /**
         * Within the period.
         *
         * @param fromDay first day (d since the start of the period)
         * @param toDay last day; infinite for ever
         */
        public When(double fromDay, double toDay) {
            this(fromDay, toDay, false);
        }
    }
}
