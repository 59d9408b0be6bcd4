package org.headfall.scenarios.sweep.page;

import java.util.ArrayList;
import java.util.List;
import org.headfall.scenarios.sweep.results.SweepFindings;
import org.headfall.scenarios.sweep.results.SweepTable;

/** The charts of a sweep, in the order of the page. */
final class SweepCharts {

    private SweepCharts() {}

    static List<Chart.Group> all(SweepFindings findings) {
        SweepTable table = findings.table();
        List<Chart.Group> charts = new ArrayList<>();
        charts.addAll(new CurveCharts(table).all());
        charts.addAll(new FanCharts(table, findings.answers()).all());
        charts.addAll(ExceedanceMaps.all(table.exceedance()));
        charts.addAll(new TradeOffChart(findings).all());
        charts.addAll(new InfluenceCharts(findings).all());
        return charts;
    }
}
