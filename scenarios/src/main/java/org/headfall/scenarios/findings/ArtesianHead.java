package org.headfall.scenarios.findings;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.headfall.solver.bore.WaterColumn;

/**
 * What one station loses.
 *
 * @param station name of the station
 * @param kind what it is, in words
 * @param groundLevel level of the ground (m above datum)
 * @param outletLevel level of the outlet (m above datum), if known
 * @param headAboveGroundBefore head above the ground at the start (m), negative below
 * @param flowBefore discharge at the start (m³/d), absent for points
 * @param hotColumn the water that fills the bore, if its temperature is given
 * @param flowByItself whether and until when it flows by itself
 * @param extremes the same on the recorded days of the largest loss of head and of the least water above the pump
 * @param atDates the same for each report date that the run reaches
 */
public record ArtesianHead(
        String station,
        String kind,
        double groundLevel,
        OptionalDouble outletLevel,
        double headAboveGroundBefore,
        OptionalDouble flowBefore,
        Optional<WaterColumn> hotColumn,
        FlowByItself flowByItself,
        List<AtDate> extremes,
        List<AtDate> atDates) {

    /** Copies the lists. */
    public ArtesianHead {
        extremes = List.copyOf(extremes);
        atDates = List.copyOf(atDates);
    }

    /**
     * Pressure that a gauge at the ground shows on the shut bore, full of its own hot water.
     *
     * @param headAboveGround head above the ground (m), at reference temperature
     * @return gauge pressure (kPa), absent where no temperature is given or the water stands below the ground
     */
    public OptionalDouble hotPressureAtGround(double headAboveGround) {
        double pressure = hotColumn
                .map(column -> column.gaugePressure(groundLevel + headAboveGround, groundLevel))
                .orElse(Double.NaN);
        return pressure >= 0 ? OptionalDouble.of(pressure) : OptionalDouble.empty();
    }

    /**
     * State at a date.
     *
     * @param label words for the date
     * @param day days since the start
     * @param headAboveGround head above the ground (m), negative below
     * @param loss head at the start less head at the date (m)
     * @param declineRate mean fall of head over the last five years (m/yr), absent if the run has not lasted that long
     * @param levelInBore water level in the bore as operated (m above datum), bores only
     * @param waterAbovePump level in the bore less the pump intake (m), if there is a pump
     * @param flow discharge of a bore or spring (m³/d), negative for injection
     * @param belowAquiferTop whether head lies below the aquifer top there, so that all these figures are in doubt
     */
    public record AtDate(
            String label,
            double day,
            double headAboveGround,
            double loss,
            OptionalDouble declineRate,
            OptionalDouble levelInBore,
            OptionalDouble waterAbovePump,
            OptionalDouble flow,
            boolean belowAquiferTop) {}
}
