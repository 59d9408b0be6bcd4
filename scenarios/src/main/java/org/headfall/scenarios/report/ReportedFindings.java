package org.headfall.scenarios.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.headfall.scenarios.findings.FlowByItself;
import org.headfall.scenarios.findings.InterferenceTable;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.StationSeries;
import org.headfall.scenarios.report.content.ArtesianHead;
import org.headfall.scenarios.report.content.Interference;
import org.headfall.scenarios.report.content.Recovery;
import org.headfall.scenarios.results.FinishedRun;

/**
 * Findings of a run as a report shows them: artesian head, recovery and interference.
 *
 * @param run the run
 * @param dates its dates
 */
record ReportedFindings(FinishedRun run, RunDates dates) {

    List<ArtesianHead> artesianHeads() {
        return run.findings().artesianHead().stream().map(this::artesianHead).toList();
    }

    List<Recovery> recovery() {
        return run.findings().recovery().lines().stream().map(this::recovery).toList();
    }

    List<Interference> interference() {
        String method = String.join(" ", run.findings().interferenceMethod());
        return run.findings().interference().stream()
                .map(table -> new Interference(dates.on(table.day()), causes(table), rows(table), method))
                .toList();
    }

    private ArtesianHead artesianHead(org.headfall.scenarios.findings.ArtesianHead head) {
        LocalDate stops = head.flowByItself() instanceof FlowByItself.Stops end ? dates.on(end.day()) : null;
        return new ArtesianHead(
                head.station(),
                head.headAboveGroundBefore(),
                head.hotPressureAtGround(head.headAboveGroundBefore()).orElse(Double.NaN),
                head.flowBefore().orElse(Double.NaN),
                stops,
                head.extremes().stream().map(at -> loss(head, at)).toList(),
                head.atDates().stream().map(at -> loss(head, at)).toList());
    }

    private ArtesianHead.Loss loss(
            org.headfall.scenarios.findings.ArtesianHead head, org.headfall.scenarios.findings.ArtesianHead.AtDate at) {
        return new ArtesianHead.Loss(
                dates.on(at.day()),
                at.headAboveGround(),
                head.hotPressureAtGround(at.headAboveGround()).orElse(Double.NaN),
                at.loss(),
                at.declineRate().orElse(Double.NaN),
                head.groundLevel() - at.levelInBore().orElse(Double.NaN),
                at.waterAbovePump().orElse(Double.NaN),
                at.flow().orElse(Double.NaN));
    }

    private Recovery recovery(org.headfall.scenarios.findings.Recovery found) {
        OptionalDouble recovered = found.recoveredDay();
        return new Recovery(
                found.station(),
                found.taking(),
                dates.on(found.stopDay()),
                found.atStop(),
                found.largest(),
                found.isCertain() ? dates.on(found.largestDay()) : null,
                found.isCertain() && !found.hasPassed(),
                dates.on(recovered),
                recovered.isPresent()
                        ? (recovered.getAsDouble() - found.stopDay()) / RunCalendar.DAYS_PER_YEAR
                        : Double.NaN,
                dates.on(found.lastDay()));
    }

    private static List<String> causes(InterferenceTable table) {
        List<String> causes = new ArrayList<>(table.causes());
        causes.add("everything else");
        return causes;
    }

    private List<Interference.Row> rows(InterferenceTable table) {
        return IntStream.range(0, table.stations().size())
                .mapToObj(row -> row(table, row))
                .toList();
    }

    private Interference.Row row(InterferenceTable table, int row) {
        String station = table.stations().get(row);
        List<Double> parts = new ArrayList<>();
        for (double part : table.drawdown()[row]) {
            parts.add(part);
        }
        parts.add(table.remainder()[row]);
        StationSeries series = run.recording().series().get(run.description().stationIndex(station));
        double atStart = series.headAt(run.recording().startGrid().day());
        return new Interference.Row(station, parts, atStart - series.headAt(table.day()));
    }
}
