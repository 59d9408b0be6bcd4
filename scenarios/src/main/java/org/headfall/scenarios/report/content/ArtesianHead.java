package org.headfall.scenarios.report.content;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What one site loses.
 *
 * @param site name of the site
 * @param before head above ground before (m), negative below ground
 * @param hotPressureBefore gauge pressure at the ground before, with the hot water of the bore (kPa), or NaN
 * @param flowBefore flow before, for what flows by itself (m³/d) or NaN
 * @param stopsFlowing first date on which it no longer flows by itself, null if it never stops or never flowed
 * @param extremes losses on the days of the largest loss and of the least water above the pump
 * @param losses losses at the report dates after the start
 */
public record ArtesianHead(
        String site,
        double before,
        double hotPressureBefore,
        double flowBefore,
        @Nullable LocalDate stopsFlowing,
        List<Loss> extremes,
        List<Loss> losses) {

    /** Copies the losses. */
    public ArtesianHead {
        extremes = List.copyOf(extremes);
        losses = List.copyOf(losses);
    }

    /**
     * Loss at a date.
     *
     * @param date the date
     * @param headAboveGround head above ground (m)
     * @param hotPressure gauge pressure at the ground with the hot water of the bore (kPa), or NaN
     * @param loss head before less head then (m)
     * @param declineRate fall of head over the five years before (m/yr)
     * @param waterLevel water level in the bore below ground while it works, positive downwards (m), or NaN
     * @param aboveIntake water above the pump intake (m) or NaN
     * @param flow flow then (m³/d) or NaN
     */
    public record Loss(
            LocalDate date,
            double headAboveGround,
            double hotPressure,
            double loss,
            double declineRate,
            double waterLevel,
            double aboveIntake,
            double flow) {}
}
