package org.headfall.scenarios.run;

import java.util.Arrays;
import java.util.List;
import org.headfall.scenarios.findings.InterferenceDrawdown;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.ReportDate;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.solver.flow.RateHistory;
import org.headfall.solver.response.Interference;
import org.headfall.solver.response.UnitResponses;

/** Splits the drawdown of a run since its start by what each bore and spring takes more or less than then. */
final class DrawdownSplit {

    private static final List<String> METHOD = List.of(
            "Drawdown since the start is split by superposition: the change of each bore's and spring's discharge since"
                    + " the start, as this run found it, times the response of the aquifer to a unit discharge there.",
            "Free flow, springs and pumps cut at their lowest level follow head and are not linear; what they actually"
                    + " gave is counted as a cause of its own, so the shares still add up. A negative share of a spring"
                    + " or free-flowing bore is water it no longer gives.",
            "The remainder is due to boundaries and recharge that change, to a start that was not at rest, and to the"
                    + " error of the numbers.");

    private DrawdownSplit() {}

    /**
     * The split at the report dates.
     *
     * @param responses responses of the problem
     * @param history discharges of the run
     * @param startRates discharge of each bore and spring at the start (m³/d)
     * @param recording what the run recorded
     * @param dates the report dates
     * @return the split
     */
    static InterferenceDrawdown of(
            UnitResponses responses,
            RateHistory history,
            double[] startRates,
            Recording recording,
            List<ReportDate> dates) {
        Interference interference = new Interference(responses, history, startRates);
        double[] days = dates.stream().mapToDouble(ReportDate::day).toArray();
        double[][][] drawdown = interference.drawdown(days);
        double[][] remainder = new double[days.length][responses.receptors()];
        for (int k = 0; k < days.length; k++) {
            for (int receptor = 0; receptor < responses.receptors(); receptor++) {
                StationSeries series = recording.series().get(receptor);
                remainder[k][receptor] = series.head()[0]
                        - series.headAt(days[k])
                        - Arrays.stream(drawdown[k][receptor]).sum();
            }
        }
        return new InterferenceDrawdown(days, drawdown, remainder, METHOD);
    }
}
