package org.headfall.scenarios.limits;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;

/** What a limit limits, with its value. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "is")
@JsonSubTypes({
    @JsonSubTypes.Type(value = LimitedQuantity.Drawdown.class, name = "drawdown"),
    @JsonSubTypes.Type(value = LimitedQuantity.FloorLevel.class, name = "floor level"),
    @JsonSubTypes.Type(value = LimitedQuantity.DeclineRate.class, name = "decline rate")
})
public sealed interface LimitedQuantity {

    /** Name for tables. */
    String words();

    /** Unit of the value, for tables. */
    String unit();

    /** The allowed value. */
    double allowed();

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
    }

    /**
     * Head itself.
     *
     * @param atLeast lowest allowed head (m above datum)
     */
    record FloorLevel(double atLeast) implements LimitedQuantity {
        @Override
        public String words() {
            return "floor level";
        }

        @Override
        public String unit() {
            return "m above datum";
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
    }
}
