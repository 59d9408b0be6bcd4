package org.headfall.scenarios.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.headfall.scenarios.accounts.AccountSummary;
import org.headfall.scenarios.doubts.ErrorBudget;
import org.headfall.scenarios.evidence.Evidence;
import org.headfall.scenarios.findings.AttributionSummary;
import org.headfall.scenarios.recording.DischargeHistory;
import org.headfall.scenarios.recording.HeadGrid;
import org.headfall.scenarios.recording.MapReference;
import org.headfall.scenarios.recording.Measurement;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.report.content.HeadDoubt;
import org.headfall.scenarios.report.content.Heading;
import org.headfall.scenarios.report.content.MeasuredHead;
import org.headfall.scenarios.report.content.ReportContent;
import org.headfall.scenarios.report.content.WhatIf;
import org.headfall.scenarios.results.AccountSummaries;
import org.headfall.scenarios.results.AttributionSummaries;
import org.headfall.scenarios.results.DischargesFile;
import org.headfall.scenarios.results.FinishedRun;
import org.headfall.scenarios.results.HeadRecords;
import org.headfall.scenarios.results.ResponsesFile;
import org.headfall.scenarios.results.ResponsesReader;
import org.headfall.solver.response.UnitResponses;

/** Makes the content of a report from a finished run. */
public final class RunReport {

    private final FinishedRun run;
    private final RunDescription description;
    private final RunMap map;
    private final RunDates dates;
    private final Optional<WhatIf> whatIf;
    private final List<AccountSummary> accounts;
    private final List<AttributionSummary> attribution;

    private RunReport(
            FinishedRun run,
            List<RunMap.Heads> grids,
            Optional<WhatIf> whatIf,
            List<AccountSummary> accounts,
            List<AttributionSummary> attribution) {
        this.run = run;
        this.description = run.description();
        this.map = new RunMap(run, grids);
        this.dates = new RunDates(run.description().calendar());
        this.whatIf = whatIf;
        this.accounts = accounts;
        this.attribution = attribution;
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
        return new RunReport(run, grids, Optional.empty(), List.of(), List.of()).content();
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
        return new RunReport(
                        run,
                        grids,
                        whatIf(run, folder),
                        AccountSummaries.ofHolders(AccountSummaries.read(folder)),
                        AttributionSummaries.read(folder))
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
        ReportedFindings findings = new ReportedFindings(run, dates);
        return new ReportContent(
                heading(),
                map.fieldMap(),
                sites.sites(),
                sites.hydrographs(),
                sites.sections(),
                findings.artesianHeads(),
                findings.recovery(),
                findings.interference(),
                attribution,
                new LimitOutcomes(dates).of(run.limits()),
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
                dates.on(measurement.day()),
                measurement.read(),
                measurement.head(),
                run.recording().series().get(station).headAt(measurement.day()));
    }

    private HeadDoubt headDoubt(ErrorBudget.Line line) {
        return new HeadDoubt(
                line.station(),
                dates.on(line.day()),
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
                dates.on(0),
                dates.on(description.endDay()));
    }

    private double largestHeadError() {
        return run.figures().stationHeadError().stream()
                .mapToDouble(Double::doubleValue)
                .filter(Double::isFinite)
                .max()
                .orElse(Double.NaN);
    }
}
