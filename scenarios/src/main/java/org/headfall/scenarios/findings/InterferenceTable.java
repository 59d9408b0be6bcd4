package org.headfall.scenarios.findings;

import java.util.List;
import java.util.OptionalDouble;

/**
 * Who causes which part of the drawdown at whom, at one date.
 *
 * @param label words for the date
 * @param day days since the start
 * @param stations names of bores, then springs, then protected points: rows of the matrix; the columns are the bores and
 *     springs
 * @param drawdown drawdown (m) at the station of the row due to the change of discharge of the station of the column
 *     since the start; a spring that gives less has a negative column
 * @param remainder drawdown (m) in the full run at each station less the sum of its row: what boundaries, recharge and
 *     drift of the start do, and the error of the split
 * @param bores what it means for each bore
 * @param field what it means for all bores together
 */
@SuppressWarnings("ArrayRecordComponent") // a matrix for tables, never compared
public record InterferenceTable(
        String label,
        double day,
        List<String> stations,
        double[][] drawdown,
        double[] remainder,
        List<BoreShare> bores,
        FieldLoss field) {

    /** Copies the lists. */
    public InterferenceTable {
        stations = List.copyOf(stations);
        bores = List.copyOf(bores);
    }

    /** Names of the bores, then springs: columns of the matrix. */
    public List<String> causes() {
        return drawdown.length == 0 ? List.of() : stations.subList(0, drawdown[0].length);
    }

    /**
     * What interference means for a bore.
     *
     * @param bore its name
     * @param own drawdown due to itself (m)
     * @param neighbours drawdown due to all other bores (m)
     * @param springs drawdown due to springs (m), negative where they give less than at the start
     * @param fullRun drawdown in the full run (m)
     * @param rate discharge at the date (m³/d)
     * @param extraLift height by which a pump must lift more because of the neighbours (m), pumped bores only
     * @param rateAlone discharge that it would have without the neighbours (m³/d), for bores whose discharge follows
     *     head: those that flow freely or are cut at their lowest level
     */
    public record BoreShare(
            String bore,
            double own,
            double neighbours,
            double springs,
            double fullRun,
            double rate,
            OptionalDouble extraLift,
            OptionalDouble rateAlone) {

        /** Yield lost to the neighbours (m³/d), for bores whose discharge follows head. */
        public OptionalDouble lossOfYield() {
            return rateAlone.isPresent()
                    ? OptionalDouble.of(Math.max(0, rateAlone.getAsDouble() - rate))
                    : OptionalDouble.empty();
        }
    }

    /**
     * What all bores together lose because they share the aquifer.
     *
     * @param pumpedRate discharge of all pumped bores (m³/d)
     * @param meanExtraLift extra lift averaged over the pumped water (m), zero if nothing is pumped
     * @param lossOfYield yield lost by bores whose discharge follows head (m³/d)
     * @param yieldAlone what those bores would give without neighbours (m³/d)
     */
    public record FieldLoss(double pumpedRate, double meanExtraLift, double lossOfYield, double yieldAlone) {}
}
