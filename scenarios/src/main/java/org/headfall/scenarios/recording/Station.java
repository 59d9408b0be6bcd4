package org.headfall.scenarios.recording;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.util.Optional;
import java.util.OptionalDouble;
import org.headfall.solver.bore.WaterColumn;
import org.headfall.solver.bore.WellLoss;

/** A place with a series of its own in the results. Names are unique among all stations of a run. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "is")
@JsonSubTypes({
    @JsonSubTypes.Type(value = Station.BoreSite.class, name = "bore"),
    @JsonSubTypes.Type(value = Station.SpringSite.class, name = "spring"),
    @JsonSubTypes.Type(value = Station.ProtectedPoint.class, name = "protected point")
})
public sealed interface Station {

    /** Name given by the user. */
    String name();

    /** Easting (m). */
    double x();

    /** Northing (m). */
    double y();

    /** Level of the ground (m above datum). */
    double groundLevel();

    /** Level from which water flows out by itself (m above datum), if the place has an outlet. */
    OptionalDouble outletLevel();

    /** Head from which water flows out by itself (m above datum), if the place has an outlet. */
    default OptionalDouble outletHead() {
        return outletLevel();
    }

    /** What the place is, in a word or two for tables. */
    String kind();

    /**
     * A bore. Its head is that of the aquifer at the bore wall.
     *
     * @param name unique name
     * @param x easting (m)
     * @param y northing (m)
     * @param groundLevel level of the ground (m above datum)
     * @param outletLevel level of the headworks outlet (m above datum), if known
     * @param pumpIntake level of the pump intake (m above datum), if the bore has a pump
     * @param lowestLevel water level at which pumping is cut back (m above datum), if there is one
     * @param aquiferTop top of the aquifer at the bore (m above datum)
     * @param screenRadius radius at the screen face (m)
     * @param wellLoss loss of the bore itself, without skin
     * @param hotColumn the water that fills the bore, if its temperature is given
     * @param holder who holds the bore, empty if not stated
     * @param proposed whether the bore is proposed rather than existing
     * @param use what the bore is there for
     * @param operation how the bore is operated, in words
     */
    record BoreSite(
            String name,
            double x,
            double y,
            double groundLevel,
            OptionalDouble outletLevel,
            OptionalDouble pumpIntake,
            OptionalDouble lowestLevel,
            double aquiferTop,
            double screenRadius,
            WellLoss wellLoss,
            Optional<WaterColumn> hotColumn,
            String holder,
            boolean proposed,
            Use use,
            String operation)
            implements Station {

        /** What a bore is there for in the run. */
        public enum Use {
            /** Pumped, if only for a part of the run. */
            PUMPED,
            /** Never pumped, but left to flow for at least a part of the run. */
            FREE_FLOWING,
            /** Never opened: to observe, or held in reserve. */
            IDLE
        }

        /** Head that carries the water of the bore, hot or not, to its outlet (m above datum), if it has one. */
        @Override
        public OptionalDouble outletHead() {
            return outletLevel.stream()
                    .map(level -> hotColumn.map(column -> column.head(level)).orElse(level))
                    .findFirst();
        }

        @Override
        public String kind() {
            return proposed ? "proposed bore" : "bore";
        }
    }

    /**
     * A spring. Its head is that of the aquifer in its cell.
     *
     * @param name unique name
     * @param x easting (m)
     * @param y northing (m)
     * @param groundLevel level of the ground (m above datum)
     * @param outlet outlet level (m above datum)
     * @param conductance discharge per metre of head above the outlet (m²/d)
     */
    record SpringSite(String name, double x, double y, double groundLevel, double outlet, double conductance)
            implements Station {

        @Override
        public OptionalDouble outletLevel() {
            return OptionalDouble.of(outlet);
        }

        @Override
        public String kind() {
            return "spring";
        }
    }

    /**
     * A protected point from which nothing is taken. Its head counts drawdown of bores close by at their true distances.
     *
     * @param name unique name
     * @param x easting (m)
     * @param y northing (m)
     * @param groundLevel level of the ground (m above datum)
     * @param outletLevel level below which it counts as no longer flowing (m above datum), if given
     */
    record ProtectedPoint(String name, double x, double y, double groundLevel, OptionalDouble outletLevel)
            implements Station {

        @Override
        public String kind() {
            return "protected point";
        }
    }
}
