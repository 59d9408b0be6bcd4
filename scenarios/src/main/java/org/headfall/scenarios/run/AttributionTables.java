package org.headfall.scenarios.run;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.headfall.scenarios.findings.AttributionTable;
import org.headfall.scenarios.recording.Recording;
import org.headfall.scenarios.recording.ReportDate;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.recording.Station;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.solver.flow.FlowProblem;
import org.headfall.solver.flow.RateHistory;
import org.headfall.solver.response.Attribution;
import org.headfall.solver.response.StationResponses;

/** Puts down to bores what a run did, at its report dates. */
final class AttributionTables {

    private AttributionTables() {}

    /**
     * One table a report date.
     *
     * @param description the run
     * @param problem its problem
     * @param responses responses of the problem at all stations
     * @param history discharges of the run
     * @param startRates discharge of each bore and spring at the start (m³/d)
     * @param fromRest whether heads at the start are the steady ones of these discharges
     * @param recording what the run recorded
     * @return the tables, in order of time
     */
    static List<AttributionTable> of(
            RunDescription description,
            FlowProblem problem,
            StationResponses responses,
            RateHistory history,
            double[] startRates,
            boolean fromRest,
            Recording recording) {
        List<ReportDate> dates = description.reportDates().stream()
                .filter(date -> date.day() > 0 && date.day() <= recording.endDay())
                .toList();
        double[] days = dates.stream().mapToDouble(ReportDate::day).toArray();
        Attribution.Split[] splits =
                new Attribution(problem, responses, history, startRates, fromRest, years(description)).on(days);
        List<AttributionTable> tables = new ArrayList<>();
        for (int k = 0; k < splits.length; k++) {
            tables.add(table(description, recording, dates.get(k), splits[k]));
        }
        return tables;
    }

    private static double[] years(RunDescription description) {
        List<Double> years = new ArrayList<>(List.of(0.0));
        for (int year = 1; years.get(year - 1) < description.endDay(); year++) {
            years.add(description.calendar().yearsAfter(0, year));
        }
        return years.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static AttributionTable table(
            RunDescription description, Recording recording, ReportDate date, Attribution.Split split) {
        int stations = description.stations().size();
        double[] wholeDrawdown = new double[stations];
        double[] wholeLoss = new double[stations];
        double[][] loss = new double[stations][0];
        double[][] seasonalLoss = new double[stations][0];
        double[] driftLoss = new double[stations];
        Arrays.fill(driftLoss, Double.NaN);
        Arrays.fill(wholeLoss, Double.NaN);
        for (int i = 0; i < stations; i++) {
            StationSeries series = recording.series().get(i);
            wholeDrawdown[i] = series.head()[0] - series.headAt(date.day());
            if (i < split.followed().length && split.followed()[i]) {
                wholeLoss[i] = series.discharge()[0] - series.dischargeAt(date.day());
                loss[i] = split.loss()[i];
                seasonalLoss[i] = split.seasonalLoss()[i];
                driftLoss[i] = split.driftLoss()[i];
            }
        }
        return new AttributionTable(
                date.label(),
                date.day(),
                description.stations().stream().map(Station::name).toList(),
                split.drawdown(),
                split.seasonalDrawdown(),
                split.driftDrawdown(),
                wholeDrawdown,
                loss,
                seasonalLoss,
                driftLoss,
                wholeLoss);
    }
}
