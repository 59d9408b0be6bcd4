package org.headfall.scenarios.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.headfall.scenarios.accounts.AccountSummary;
import org.headfall.scenarios.doubts.ErrorBudget;
import org.headfall.scenarios.evidence.Evidence;
import org.headfall.scenarios.findings.FlowByItself;
import org.headfall.scenarios.findings.InterferenceTable;
import org.headfall.scenarios.limits.LimitResult;
import org.headfall.scenarios.limits.Outcome;
import org.headfall.scenarios.recording.DischargeHistory;
import org.headfall.scenarios.recording.HeadGrid;
import org.headfall.scenarios.recording.MapReference;
import org.headfall.scenarios.recording.Measurement;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.report.content.ArtesianHead;
import org.headfall.scenarios.report.content.HeadDoubt;
import org.headfall.scenarios.report.content.Heading;
import org.headfall.scenarios.report.content.Interference;
import org.headfall.scenarios.report.content.LimitOutcome;
import org.headfall.scenarios.report.content.MeasuredHead;
import org.headfall.scenarios.report.content.Recovery;
import org.headfall.scenarios.report.content.ReportContent;
import org.headfall.scenarios.report.content.WhatIf;
import org.headfall.scenarios.results.AccountSummaries;
import org.headfall.scenarios.results.DischargesFile;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.results.HeadRecords;
import org.headfall.scenarios.results.ResponsesFile;
import org.headfall.scenarios.results.ResponsesReader;
import org.headfall.scenarios.spatial.Position;
import org.headfall.solver.response.UnitResponses;
import org.jspecify.annotations.Nullable;

/** Makes the content of a report from a finished run. */
public final class RunReport {

    private final FinishedRun run;
    private final RunDescription description;
    private final RunMap map;
    private final Optional<WhatIf> whatIf;
    private final List<AccountSummary> accounts;

    private RunReport(
            FinishedRun run, List<RunMap.Heads> grids, Optional<WhatIf> whatIf, List<AccountSummary> accounts) {
        this.run = run;
        this.description = run.description();
        this.map = new RunMap(run, grids);
        this.whatIf = whatIf;
        this.accounts = accounts;
    }

    /**
     * Content of the report of a run, without what only the files of its folder hold.
     *
     * @param run the run
     * @return what the report says; the start, the report dates and the end are its dates
     */
    public static ReportContent of(FinishedRun run) {
        List<RunMap.Heads> grids =
                run.recording().grids().stream().map(RunMap.Heads::of).toList();
        return new RunReport(run, grids, Optional.empty(), List.of()).content();
    }

    /**
     * Content of the report of a run with its folder.
     *
     * @param run the run
     * @param folder folder of its results; its NetCDF files must be complete
     * @return what the report says; its map has every date for which there are grids
     * @throws IOException if a file of the folder cannot be read
     */
    public static ReportContent of(FinishedRun run, Path folder) throws IOException {
        List<RunMap.Heads> grids = new ArrayList<>();
        try (HeadRecords records = new HeadRecords(folder)) {
            double[] days = records.days();
            for (int record = 0; record < days.length; record++) {
                grids.add(RunMap.Heads.of(new HeadGrid(days[record], records.head(record))));
            }
        }
        return new RunReport(run, grids, whatIf(run, folder), AccountSummaries.ofHolders(AccountSummaries.read(folder)))
                .content();
    }

    /** What rates may be changed by, if the run stored its responses and discharges. */
    private static Optional<WhatIf> whatIf(FinishedRun run, Path folder) throws IOException {
        Optional<DischargeHistory> discharges = DischargesFile.read(folder);
        if (discharges.isEmpty() || !Files.isRegularFile(folder.resolve(ResponsesFile.NAME))) {
            return Optional.empty();
        }
        UnitResponses responses = ResponsesReader.read(folder).responses();
        return Optional.of(new RunWhatIf(run, responses, discharges.get()).whatIf());
    }

    private ReportContent content() {
        RunSites sites = new RunSites(run, map.days());
        return new ReportContent(
                heading(),
                map.fieldMap(),
                sites.sites(),
                sites.hydrographs(),
                sites.sections(),
                run.findings().artesianHead().stream().map(this::artesianHead).toList(),
                run.findings().recovery().lines().stream().map(this::recovery).toList(),
                interference(),
                run.limits().stream().map(this::limit).toList(),
                accounts,
                description.measurements().stream().map(this::measured).toList(),
                whatIf,
                run.recording().balances(),
                largestHeadError(),
                run.figures().errorBudget().map(ErrorBudget::lines).orElse(List.of()).stream()
                        .map(this::headDoubt)
                        .toList(),
                run.figures()
                        .errorBudget()
                        .map(ErrorBudget::methods)
                        .orElse(
                                run.figures().errorMethod().isBlank()
                                        ? List.of()
                                        : List.of(run.figures().errorMethod())),
                Evidence.of(run),
                RunProvenance.of(run));
    }

    private MeasuredHead measured(Measurement measurement) {
        int station = description.stationIndex(measurement.station());
        return new MeasuredHead(
                measurement.station(),
                date(measurement.day()),
                measurement.read(),
                measurement.head(),
                run.recording().series().get(station).headAt(measurement.day()));
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
                ScenarioQuestion.of(description.provenance().scenarioText()),
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

    private Recovery recovery(org.headfall.scenarios.findings.Recovery found) {
        OptionalDouble recovered = found.recoveredDay();
        return new Recovery(
                found.station(),
                found.taking(),
                date(found.stopDay()),
                found.atStop(),
                found.largest(),
                found.isCertain() ? date(found.largestDay()) : null,
                found.isCertain() && !found.hasPassed(),
                date(recovered),
                recovered.isPresent()
                        ? (recovered.getAsDouble() - found.stopDay()) / RunCalendar.DAYS_PER_YEAR
                        : Double.NaN,
                date(found.lastDay()));
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
            return limit(
                    result,
                    Outcome.Kind.HOLDS,
                    holds.worst(),
                    null,
                    holds.worst().note());
        }
        if (outcome instanceof Outcome.Crossed crossed) {
            return limit(
                    result,
                    Outcome.Kind.CROSSED,
                    crossed.worst(),
                    date(crossed.firstDay()),
                    crossed.worst().note());
        }
        if (outcome instanceof Outcome.Undecided undecided) {
            LocalDate first = date(undecided.firstDay());
            return limit(result, Outcome.Kind.UNDECIDED, undecided.worst(), first, undecided.reason());
        }
        String reason = outcome instanceof Outcome.NotEvaluated missing ? missing.reason() : outcome.words();
        return limit(result, Outcome.Kind.NOT_EVALUATED, null, null, reason);
    }

    private LimitOutcome limit(
            LimitResult result,
            Outcome.Kind verdict,
            Outcome.@Nullable Worst worst,
            @Nullable LocalDate crossedOn,
            String remark) {
        var limit = result.limit();
        Optional<Position> spot = worst == null ? Optional.empty() : worst.spot();
        boolean dated = limit.quantity().changesOverTime();
        return new LimitOutcome(
                limit.name(),
                limit.text(),
                limit.station(),
                limit.quantity().words(),
                limit.conditions(),
                limit.quantity().allowed(),
                worst == null ? Double.NaN : worst.value(),
                worst == null || !dated ? null : date(worst.day()),
                limit.quantity().unit(),
                worst == null ? Double.NaN : worst.error(),
                worst == null ? Double.NaN : worst.margin(),
                result.relativeMargin().orElse(Double.NaN),
                verdict,
                dated ? crossedOn : null,
                remark,
                spot.map(Position::x).orElse(Double.NaN),
                spot.map(Position::y).orElse(Double.NaN));
    }
}
