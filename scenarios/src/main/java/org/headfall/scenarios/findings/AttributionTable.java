package org.headfall.scenarios.findings;

import java.util.List;

/**
 * Which bore did what to heads, springs and flowing bores until a date. Springs and bores whose discharge follows head
 * are no causes: what they give less is an effect, and what that does to heads is put down to who caused it.
 *
 * @param label words for the date
 * @param day days since the start
 * @param stations names of bores, then springs, then protected points: rows; the columns are the bores
 * @param drawdown drawdown since the start (m) by each bore
 * @param seasonal part of it by what the bore takes beyond its mean of the year (m)
 * @param drift drawdown by boundaries, recharge and a start that was not at rest (m), no bore's doing
 * @param wholeDrawdown drawdown in the full run (m); what it is more than the sum of its row and drift is not linear
 * @param loss discharge less than at the start (m³/d) by each bore; rows are the stations that follow head, others are empty
 * @param seasonalLoss part of it by what the bore takes beyond its mean of the year (m³/d), rows as of loss
 * @param driftLoss discharge less by boundaries, recharge and the start (m³/d), NaN where a station does not follow head
 * @param wholeLoss loss of discharge in the full run (m³/d), NaN where a station does not follow head
 */
@SuppressWarnings("ArrayRecordComponent") // matrices for tables, never compared
public record AttributionTable(
        String label,
        double day,
        List<String> stations,
        double[][] drawdown,
        double[][] seasonal,
        double[] drift,
        double[] wholeDrawdown,
        double[][] loss,
        double[][] seasonalLoss,
        double[] driftLoss,
        double[] wholeLoss) {

    /** Copies the list. */
    public AttributionTable {
        stations = List.copyOf(stations);
    }
}
