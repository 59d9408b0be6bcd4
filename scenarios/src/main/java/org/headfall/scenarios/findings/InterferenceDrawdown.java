package org.headfall.scenarios.findings;

import java.util.List;

/**
 * Drawdown split by cause, as the solver gives it.
 *
 * @param days days since the start, increasing
 * @param drawdown drawdown (m): {@code [day][receptor][cause]}, receptors and causes being all bores, then all springs
 * @param remainder drawdown due to everything else (m): {@code [day][receptor]}
 * @param method how it was computed, one sentence each; says where the system is not linear
 */
@SuppressWarnings("ArrayRecordComponent") // handed from the solver to the tables, never compared
public record InterferenceDrawdown(double[] days, double[][][] drawdown, double[][] remainder, List<String> method) {

    /** Copies the list and checks the number of days. */
    public InterferenceDrawdown {
        method = List.copyOf(method);
        if (drawdown.length != days.length || remainder.length != days.length) {
            throw new IllegalArgumentException("need one matrix and one remainder a day, found " + drawdown.length
                    + " and " + remainder.length + " for " + days.length + " days");
        }
    }
}
