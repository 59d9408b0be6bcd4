package org.headfall.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.headfall.cli.answer.AnswerJson;
import org.headfall.cli.answer.TextBlock;
import org.headfall.scenarios.document.ParsedDocument;
import org.headfall.scenarios.findings.BedAdjustment;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.problem.Notice;
import org.headfall.scenarios.problem.Problem;
import org.headfall.scenarios.reading.ScenarioReading;
import org.headfall.scenarios.recording.RunDescription;
import org.headfall.scenarios.run.RunPlanner;
import org.headfall.scenarios.scenario.Scenario;
import org.headfall.scenarios.sweep.document.SweepReader;
import org.headfall.solver.grid.Axis;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Reads a scenario document with its files, puts it on cells and says everything that is wrong with it; or a sweep. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        addMethodSubcommands = false,
        description = "Reads a scenario and its files, reports every problem at once, runs nothing. Of a sweep it"
                + " reads the document, the base scenario and as many runs as ten seconds allow, and says what the"
                + " sweep would take; exit code 5 if some of these runs are not valid.",
        footerHeading = "%nExamples:%n",
        footer = {"  headfall check my-field/scenario.yaml", "  headfall check my-field/sweep.yaml"})
final class CheckCommand implements Callable<Integer> {

    /** Lengths from here on are told without a decimal (m). */
    private static final double METRES_WITHOUT_DECIMAL = 10;

    @Mixin
    private final ScenarioArgument argument = new ScenarioArgument();

    @Mixin
    private final JsonOption json = new JsonOption();

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli before call
    private CommandSpec spec;

    @Override
    public Integer call() throws InputException, IOException {
        PrintWriter out = spec.commandLine().getOut();
        ParsedDocument document = argument.parse();
        if (SweepReader.isSweep(document)) {
            return SweepCheck.of(document.file(), argument.readSweep(document))
                    .show(json.wanted(), out)
                    .code();
        }
        ScenarioReading reading = argument.read(document);
        Scenario scenario = reading.orThrow();
        // some problems show only once everything is on the cells of the grid
        RunDescription run = RunPlanner.plan(reading, ProgramVersion.text(), 1).description();
        Summary summary = Summary.of(
                argument.document(), scenario, run, reading.problems().notices());
        if (json.wanted()) {
            out.println(AnswerJson.of(summary));
        } else {
            show(summary, out);
        }
        return ExitCode.DONE.code();
    }

    private static void show(Summary summary, PrintWriter out) {
        out.println(summary.document() + ": no problem found.");
        TextBlock text = new TextBlock(out);
        summary.notices().forEach(notice -> text.message("note: " + notice));
        out.println(summary.title() + ", " + summary.from() + " to " + summary.until());
        out.println("bores: " + summary.bores() + ", springs: " + summary.springs() + ", protected points: "
                + summary.protectedPoints() + ", limits: " + summary.limits());
        out.println(String.format(
                Locale.ROOT,
                "cells: %,d, from %s to %s wide",
                summary.cells(),
                metres(summary.narrowestCellMetres()),
                metres(summary.widestCellMetres())));
        summary.bedAdjusts().ifPresent(time -> out.println("sealing bed: adjusts to a change of head in " + time));
    }

    private static String metres(double length) {
        return String.format(Locale.ROOT, length < METRES_WITHOUT_DECIMAL ? "%.1f m" : "%,.0f m", length);
    }

    private record Summary(
            List<Problem> problems,
            List<Notice> notices,
            String document,
            String title,
            LocalDate from,
            LocalDate until,
            int bores,
            int springs,
            int protectedPoints,
            int limits,
            int cells,
            double narrowestCellMetres,
            double widestCellMetres,
            Optional<String> bedAdjusts) {

        static Summary of(Path document, Scenario scenario, RunDescription run, List<Notice> notices) {
            Axis x = run.grid().x();
            Axis y = run.grid().y();
            return new Summary(
                    List.of(),
                    notices,
                    document.toString(),
                    scenario.title(),
                    scenario.period().from(),
                    scenario.period().until(),
                    scenario.bores().size(),
                    scenario.springs().size(),
                    scenario.protectedPoints().size(),
                    scenario.limits().size(),
                    run.grid().cellCount(),
                    Math.min(x.smallestWidth(), y.smallestWidth()),
                    Math.max(x.largestWidth(), y.largestWidth()),
                    BedAdjustment.of(run).map(BedAdjustment::words));
        }
    }
}
