package org.headfall.scenarios.limits;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.time.MonthDay;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/** What a limit limits, with its value. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "is")
@JsonSubTypes({
    @JsonSubTypes.Type(value = LimitedQuantity.Drawdown.class, name = "drawdown"),
    @JsonSubTypes.Type(value = LimitedQuantity.FloorLevel.class, name = "floor level"),
    @JsonSubTypes.Type(value = LimitedQuantity.Pressure.class, name = "pressure"),
    @JsonSubTypes.Type(value = LimitedQuantity.DeclineRate.class, name = "decline rate"),
    @JsonSubTypes.Type(value = LimitedQuantity.ShareOfAvailableHead.class, name = "share of available head"),
    @JsonSubTypes.Type(value = LimitedQuantity.Flow.class, name = "flow"),
    @JsonSubTypes.Type(value = LimitedQuantity.SpringDischarge.class, name = "spring discharge"),
    @JsonSubTypes.Type(value = LimitedQuantity.ShareOfSpringDischarge.class, name = "share of spring discharge"),
    @JsonSubTypes.Type(value = LimitedQuantity.Volume.class, name = "volume"),
    @JsonSubTypes.Type(value = LimitedQuantity.Distance.class, name = "distance")
})
public sealed interface LimitedQuantity {

    /** Name for tables. */
    String words();

    /** Unit of the value, for tables. */
    String unit();

    /** Unit of a change of the quantity, which has no datum. */
    default String unitOfChange() {
        return unit();
    }

    /** The allowed value. */
    double allowed();

    /** Whether a smaller value is the worse one. */
    default boolean limitsFromBelow() {
        return true;
    }

    /** Whether it is a change, measured from something, and not a value in itself. */
    default boolean measuresAnEffect() {
        return false;
    }

    /**
     * What margins are measured by, so that those of different quantities can be compared: the allowed value, one unit where
     * that is zero.
     */
    default double scaleOfMargin() {
        return allowed() == 0 ? 1 : Math.abs(allowed());
    }

    /** Distance of a value to the allowed one in the allowed direction, negative beyond it. */
    default double margin(double value) {
        return limitsFromBelow() ? value - allowed() : allowed() - value;
    }

    /**
     * Head with which it is compared, less head.
     *
     * @param atMost largest allowed drawdown (m)
     */
    record Drawdown(double atMost) implements LimitedQuantity {
        @Override
        public String words() {
            return "drawdown";
        }

        @Override
        public String unit() {
            return "m";
        }

        @Override
        public double allowed() {
            return atMost;
        }

        @Override
        public boolean limitsFromBelow() {
            return false;
        }

        @Override
        public boolean measuresAnEffect() {
            return true;
        }
    }

    /**
     * Head itself.
     *
     * @param atLeast lowest allowed head (m above datum)
     */
    record FloorLevel(double atLeast) implements LimitedQuantity {

        /**
         * What a margin above a level is measured by (m): the level itself says only where the datum is. A drawdown limit of
         * common size (common practice, no source).
         */
        private static final double LEVEL_SCALE = 10;

        @Override
        public String words() {
            return "floor level";
        }

        @Override
        public String unit() {
            return "m above datum";
        }

        @Override
        public String unitOfChange() {
            return "m";
        }

        @Override
        public double scaleOfMargin() {
            return LEVEL_SCALE;
        }

        @Override
        public double allowed() {
            return atLeast;
        }
    }

    /**
     * Pressure that a gauge on the shut bore, full of its own water, shows for the head at its wall.
     *
     * @param atLeast lowest allowed gauge pressure (kPa)
     * @param gaugeLevel level of the gauge (m above datum); absent for the ground beside the bore
     */
    record Pressure(double atLeast, OptionalDouble gaugeLevel) implements LimitedQuantity {
        @Override
        public String words() {
            return gaugeLevel.isPresent()
                    ? String.format(Locale.ROOT, "gauge pressure at %.2f m above datum", gaugeLevel.getAsDouble())
                    : "gauge pressure at the ground";
        }

        @Override
        public String unit() {
            return "kPa";
        }

        @Override
        public double allowed() {
            return atLeast;
        }
    }

    /**
     * Mean fall of head over a time before each day. Whole years keep the seasons out of it.
     *
     * @param atMost largest allowed rate (m/yr)
     * @param overYears time over which the mean is taken (yr), at least one
     */
    record DeclineRate(double atMost, int overYears) implements LimitedQuantity {

        /** Checks the time. */
        public DeclineRate {
            if (overYears < 1) {
                throw new IllegalArgumentException("a decline rate is taken over at least 1 year, found " + overYears);
            }
        }

        @Override
        public String words() {
            return "decline rate over " + overYears + (overYears == 1 ? " year" : " years");
        }

        @Override
        public String unit() {
            return "m/yr";
        }

        @Override
        public double allowed() {
            return atMost;
        }

        @Override
        public boolean limitsFromBelow() {
            return false;
        }

        @Override
        public boolean measuresAnEffect() {
            return true;
        }
    }

    /**
     * Height of head above a level, as a share of that of the head with which it is compared.
     *
     * @param atLeast smallest allowed share (%)
     * @param above the level
     */
    record ShareOfAvailableHead(double atLeast, Base above) implements LimitedQuantity {

        /** The level from which available head is counted. */
        public enum BaseKind {
            /** Top of the aquifer. */
            AQUIFER_TOP("the aquifer top"),
            /** Intake of the pump of the bore. */
            PUMP_INTAKE("the pump intake"),
            /** Outlet of the bore or spring. */
            OUTLET("the outlet"),
            /** A level that the limit gives. */
            GIVEN("");

            private final String words;

            BaseKind(String words) {
                this.words = words;
            }
        }

        /**
         * Which level.
         *
         * @param kind what it is
         * @param level the level (m above datum) of a given one, otherwise NaN
         */
        public record Base(BaseKind kind, OptionalDouble level) {
            String words() {
                return level.isPresent()
                        ? String.format(Locale.ROOT, "%.2f m above datum", level.getAsDouble())
                        : kind.words;
            }
        }

        @Override
        public String words() {
            return "share of available head above " + above.words();
        }

        @Override
        public String unit() {
            return "%";
        }

        @Override
        public double allowed() {
            return atLeast;
        }

        @Override
        public boolean measuresAnEffect() {
            return true;
        }
    }

    /**
     * Discharge of a bore while it is left to flow.
     *
     * @param atLeast smallest allowed discharge (L/s)
     * @param open when it is left to flow
     */
    record Flow(double atLeast, List<OpenTime> open) implements LimitedQuantity {
        /** Copies the list. */
        public Flow {
            open = List.copyOf(open);
        }

        /**
         * Time in which a bore is left to flow. Records hold the state before a change on their day, so the last day
         * belongs to it and the first one does not.
         *
         * @param fromDay day it is opened (d since the start), before the run if it was always open
         * @param toDay day it is shut
         */
        public record OpenTime(double fromDay, double toDay) {
            boolean has(double day) {
                return day > fromDay && day <= toDay;
            }
        }

        @Override
        public String words() {
            return "flow";
        }

        @Override
        public String unit() {
            return "L/s";
        }

        @Override
        public double allowed() {
            return atLeast;
        }
    }

    /**
     * Discharge of a spring.
     *
     * @param atLeast smallest allowed discharge (L/s)
     */
    record SpringDischarge(double atLeast) implements LimitedQuantity {
        @Override
        public String words() {
            return "spring discharge";
        }

        @Override
        public String unit() {
            return "L/s";
        }

        @Override
        public double allowed() {
            return atLeast;
        }
    }

    /**
     * Discharge of a spring as a share of that with which it is compared.
     *
     * @param atLeast smallest allowed share (%)
     */
    record ShareOfSpringDischarge(double atLeast) implements LimitedQuantity {
        @Override
        public String words() {
            return "share of spring discharge";
        }

        @Override
        public String unit() {
            return "%";
        }

        @Override
        public double allowed() {
            return atLeast;
        }

        @Override
        public boolean measuresAnEffect() {
            return true;
        }
    }

    /**
     * Water taken since the beginning of the water year.
     *
     * @param atMost largest allowed volume of a water year (ML)
     * @param yearBegins first day of each water year
     * @param meters readings of the meters of the bores; none for bores without one
     */
    record Volume(double atMost, MonthDay yearBegins, List<MeteredBore> meters) implements LimitedQuantity {

        /**
         * A bore with a meter.
         *
         * @param bore its name
         * @param readings what the meter showed, in the order of days
         */
        public record MeteredBore(String bore, List<Reading> readings) {
            /** Copies the list. */
            public MeteredBore {
                readings = List.copyOf(readings);
            }
        }

        /**
         * A reading of a meter.
         *
         * @param day its day (d since the start of the run, negative before it)
         * @param volume all that has ever passed the meter (m³)
         */
        public record Reading(double day, double volume) {}

        /** Copies the list. */
        public Volume {
            meters = List.copyOf(meters);
        }

        private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM", Locale.ENGLISH);

        @Override
        public String words() {
            return "volume per water year from " + DAY.format(yearBegins);
        }

        @Override
        public String unit() {
            return "ML";
        }

        @Override
        public double allowed() {
            return atMost;
        }

        @Override
        public boolean limitsFromBelow() {
            return false;
        }
    }

    /** Whether its value changes over time, so that there is a date to a worst one. */
    default boolean changesOverTime() {
        return true;
    }

    /**
     * Distance of the nearest of some bores. No run is needed for it.
     *
     * @param atLeast smallest allowed distance (m)
     * @param bores names of the bores
     */
    record Distance(double atLeast, List<String> bores) implements LimitedQuantity {
        /** Copies the list. */
        public Distance {
            bores = List.copyOf(bores);
        }

        @Override
        public boolean changesOverTime() {
            return false;
        }

        @Override
        public String words() {
            return "distance";
        }

        @Override
        public String unit() {
            return "m";
        }

        @Override
        public double allowed() {
            return atLeast;
        }
    }
}
