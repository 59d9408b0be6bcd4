package org.headfall.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.concurrent.Callable;
import org.headfall.cli.answer.TextBlock;
import org.headfall.scenarios.limits.UncountedLimit;
import org.headfall.scenarios.monitoring.ExpectedBands;
import org.headfall.scenarios.monitoring.Warning;
import org.headfall.scenarios.monitoring.WarningOutputs;
import org.headfall.scenarios.monitoring.WarningStudy;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.recording.RunCalendar;
import org.headfall.scenarios.results.ResultsReader;
import org.headfall.scenarios.results.StatedErrors;
import org.headfall.scenarios.run.RunFromResponses;
import org.headfall.scenarios.run.RunPlan;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Says what to watch and until when acting still helps. */
@Command(
        name = "monitor",
        mixinStandardHelpOptions = true,
        addMethodSubcommands = false,
        description = "Says for each limit that is crossed until when stopping the bores that it counts still prevents"
                + " that, which heads monitoring bores show then, and between which heads a reading is expected every"
                + " year: the computed head with its numerical error and two standard deviations of how far computed"
                + " heads have missed measured ones. Needs the results of a run on the same aquifer and grid.",
        footerHeading = "%nExample:%n",
        footer = {"  headfall run my-field", "  headfall monitor my-field"})
final class MonitorCommand implements Callable<Integer> {

    @Mixin
    private final EarlierRun earlier = new EarlierRun();

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli before call
    private CommandSpec spec;

    @Override
    public Integer call() throws InputException, IOException {
        Path target = earlier.target("monitor", WarningOutputs.FILES);
        RunPlan plan = earlier.plan();
        RunFromResponses answers = earlier.answers(plan, spec.commandLine().getErr());
        StatedErrors stated = ResultsReader.errors(earlier.responses());
        WarningStudy study = new WarningStudy(plan, answers, stated);
        List<Warning> warnings = study.warnings();
        List<UncountedLimit> leftOut = study.leftOut();
        ExpectedBands bands =
                new ExpectedBands(plan.description(), answers.answer().orElseThrow(), stated.heads());
        RunCalendar calendar = plan.description().calendar();
        new WarningOutputs(warnings, leftOut, bands, calendar).into(target, earlier.overwrites());
        PrintWriter out = spec.commandLine().getOut();
        TextBlock text = new TextBlock(out);
        if (warnings.isEmpty()) {
            out.println("The scenario has no limit that can be monitored at a bore, spring or protected point.");
        }
        if (!warnings.isEmpty()) {
            out.println("With the rates of the document as it is now:");
        }
        for (Warning warning : warnings) {
            text.sentence(warning.limit() + ", " + warning.station() + ":");
            text.item(sentence(warning, calendar));
        }
        if (!warnings.isEmpty() && !stated.gridAndBoundaryTested()) {
            text.sentence(
                    "The errors that dates were widened by are those of time steps and solver alone: what the grid and"
                            + " far boundaries add was not tested (run --doubts finds it).");
        }
        if (!leftOut.isEmpty()) {
            text.sentence("Not monitored:");
            leftOut.forEach(limit -> text.item(limit.sentence()));
        }
        out.println("Written: " + target);
        return ExitCode.DONE.code();
    }

    private static String sentence(Warning warning, RunCalendar calendar) {
        Warning.Crossing crossing = warning.crossing();
        if (crossing.earliest().isEmpty()) {
            return warning.says();
        }
        return crossed(crossing, calendar)
                + warning.lastChance()
                        .map(chance -> "; last day for stopping: " + date(chance.day(), calendar) + ". ")
                        .orElse(". ")
                + warning.says();
    }

    private static String crossed(Warning.Crossing crossing, RunCalendar calendar) {
        String computed = crossing.computed().isPresent()
                ? "crossed on " + date(crossing.computed().getAsDouble(), calendar) + " as computed"
                : "not crossed as computed";
        LocalDate earliest = date(crossing.earliest().orElseThrow(), calendar);
        return computed + "; by its error "
                + (crossing.latest().isPresent()
                        ? "between " + earliest + " and "
                                + date(crossing.latest().getAsDouble(), calendar)
                        : "from " + earliest + " on or never");
    }

    private static LocalDate date(double day, RunCalendar calendar) {
        return calendar.at(day).toLocalDate();
    }
}
