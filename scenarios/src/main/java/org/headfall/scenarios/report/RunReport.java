package org.headfall.scenarios.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.headfall.scenarios.doubts.ErrorBudget;
import org.headfall.scenarios.findings.FlowByItself;
import org.headfall.scenarios.findings.InterferenceTable;
import org.headfall.scenarios.limits.LimitResult;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.recording.HeadGrid;
import org.headfall.scenarios.recording.MapReference;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.report.content.ArtesianHead;
import org.headfall.scenarios.report.content.HeadDoubt;
import org.headfall.scenarios.report.content.Heading;
import org.headfall.scenarios.report.content.Interference;
import org.headfall.scenarios.report.content.LimitOutcome;
import org.headfall.scenarios.report.content.LimitOutcome.Verdict;
import org.headfall.scenarios.report.content.ReportContent;
import org.headfall.scenarios.results.FinishedRun;
import org.jspecify.annotations.Nullable;

/** Makes the content of a report from a finished run. */
public final class RunReport {

    private final FinishedRun run;
    private final RunDescription description;

    private RunReport(FinishedRun run) {
        this.run = run;
        this.description = run.description();
    }

    /**
     * Content of the report of a run.
     *
     * @param run the run
     * @return what the report says; the start, the report dates and the end are its dates
     */
    public static ReportContent of(FinishedRun run) {
        return new RunReport(run).content();
    }

    private ReportContent content() {
        RunSites sites = new RunSites(run);
        return new ReportContent(
                heading(),
                new RunMap(run).fieldMap(),
                sites.sites(),
                sites.hydrographs(),
                sites.sections(),
                run.findings().artesianHead().stream().map(this::artesianHead).toList(),
                interference(),
                run.limits().stream().map(this::limit).toList(),
                run.recording().balances(),
                largestHeadError(),
                run.figures().errorBudget().map(ErrorBudget::lines).orElse(List.of()).stream()
                        .map(this::headDoubt)
                        .toList(),
                run.figures().errorBudget().map(ErrorBudget::methods).orElse(List.of()),
                List.of(),
                new RunDoubts(run).doubts(),
                RunDoubts.provenance(run));
    }

    private HeadDoubt headDoubt(ErrorBudget.Line line) {
        return new HeadDoubt(
                line.station(),
                date(line.day()),
                line.time(),
                line.grid().orElse(Double.NaN),
                line.solver(),
                line.boundary().orElse(Double.NaN),
                line.together());
    }

    private Heading heading() {
        return new Heading(
                description.title(),
                "",
                description.datum(),
                description.mapReference().map(MapReference::code).orElse(""),
                date(0),
                date(description.endDay()));
    }

    private LocalDate date(double day) {
        return description.calendar().at(day).toLocalDate();
    }

    private @Nullable LocalDate date(OptionalDouble day) {
        return day.isPresent() ? date(day.getAsDouble()) : null;
    }

    private double largestHeadError() {
        return run.figures().stationHeadError().stream()
                .mapToDouble(Double::doubleValue)
                .filter(Double::isFinite)
                .max()
                .orElse(Double.NaN);
    }

    private ArtesianHead artesianHead(org.headfall.scenarios.findings.ArtesianHead head) {
        LocalDate stops = head.flowByItself() instanceof FlowByItself.Stops end ? date(end.day()) : null;
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
                date(at.day()),
                at.headAboveGround(),
                head.hotPressureAtGround(at.headAboveGround()).orElse(Double.NaN),
                at.loss(),
                at.declineRate().orElse(Double.NaN),
                head.groundLevel() - at.levelInBore().orElse(Double.NaN),
                at.waterAbovePump().orElse(Double.NaN),
                at.flow().orElse(Double.NaN));
    }

    private List<Interference> interference() {
        String method = String.join(" ", run.findings().interferenceMethod());
        return run.findings().interference().stream()
                .map(table -> new Interference(date(table.day()), causes(table), rows(table), method))
                .toList();
    }

    private static List<String> causes(InterferenceTable table) {
        List<String> causes = new ArrayList<>(table.causes());
        causes.add("everything else");
        return causes;
    }

    private List<Interference.Row> rows(InterferenceTable table) {
        HeadGrid start = run.recording().startGrid();
        return IntStream.range(0, table.stations().size())
                .mapToObj(row -> {
                    String station = table.stations().get(row);
                    List<Double> parts = new ArrayList<>();
                    for (double part : table.drawdown()[row]) {
                        parts.add(part);
                    }
                    parts.add(table.remainder()[row]);
                    var series = run.recording().series().get(description.stationIndex(station));
                    return new Interference.Row(
                            station, parts, series.headAt(start.day()) - series.headAt(table.day()));
                })
                .toList();
    }

    private LimitOutcome limit(LimitResult result) {
        Outcome outcome = result.outcome();
        if (outcome instanceof Outcome.Holds holds) {
            return limit(result, Verdict.HOLDS, holds.worst(), null, "");
        }
        if (outcome instanceof Outcome.Crossed crossed) {
            return limit(result, Verdict.CROSSED, crossed.worst(), date(crossed.firstDay()), "");
        }
        if (outcome instanceof Outcome.Undecided undecided) {
            LocalDate first = date(undecided.firstDay());
            return limit(result, Verdict.UNDECIDED, undecided.worst(), first, undecided.reason());
        }
        String reason = outcome instanceof Outcome.NotEvaluated missing ? missing.reason() : outcome.words();
        return limit(result, Verdict.NOT_EVALUATED, null, null, reason);
    }

    private LimitOutcome limit(
            LimitResult result,
            Verdict verdict,
            Outcome.@Nullable Worst worst,
            @Nullable LocalDate crossedOn,
            String remark) {
        var limit = result.limit();
        return new LimitOutcome(
                limit.name(),
                limit.text(),
                limit.station(),
                limit.quantity().words(),
                "caused by " + limit.comparison().cause() + ", compared with "
                        + limit.comparison().words() + ", " + limit.period().words(),
                limit.quantity().allowed(),
                worst == null ? Double.NaN : worst.value(),
                worst == null ? null : date(worst.day()),
                limit.quantity().unit(),
                worst == null ? Double.NaN : worst.error(),
                worst == null ? Double.NaN : worst.margin(),
                verdict,
                crossedOn,
                remark);
    }
}
