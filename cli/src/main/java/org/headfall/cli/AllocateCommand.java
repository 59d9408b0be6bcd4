package org.headfall.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.headfall.cli.answer.AnswerJson;
import org.headfall.cli.answer.TextBlock;
import org.headfall.cli.progress.Progress;
import org.headfall.scenarios.allocation.AllocationFiles;
import org.headfall.scenarios.allocation.AllocationResult;
import org.headfall.scenarios.allocation.AllocationSearch;
import org.headfall.scenarios.allocation.AllocationWords;
import org.headfall.scenarios.allocation.ContradictionException;
import org.headfall.scenarios.limits.UncountedLimit;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.scenarios.reading.ScenarioReading;
import org.headfall.scenarios.results.ResultsFolder;
import org.headfall.scenarios.run.PlanningResponses;
import org.headfall.scenarios.run.RunPlan;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Says how bores best share the water under the limits of the document, and what each limit costs. */
@Command(
        name = "allocate",
        mixinStandardHelpOptions = true,
        addMethodSubcommands = false,
        description = "Finds the best rates of bores with limits kept, and what each limit costs; those that it"
                + " does not count are listed.",
        footerHeading = "%nExample:%n",
        footer = "  headfall allocate my-field")
final class AllocateCommand implements Callable<Integer> {

    private final Terminal terminal;

    @Mixin
    private final PlanningOptions options = new PlanningOptions();

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli before call
    private CommandSpec spec;

    /**
     * Makes the command.
     *
     * @param terminal what is at the other end of the streams
     */
    AllocateCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws InputException, IOException {
        Path target = options.target("-rates", AllocationFiles.NAMES);
        ScenarioReading reading = options.read();
        RunPlan plan = options.plan(reading);
        PlanningOptions.remark(reading, spec.commandLine().getErr());
        PlanningSection.require(
                reading, "allocation", reading.orThrow().planning().allocation());
        PrintWriter err = spec.commandLine().getErr();
        try (ResultsFolder folder = options.open(target, AllocationFiles.NAMES);
                Progress progress = terminal.progress(err)) {
            PlanningResponses responses = options.responses(plan);
            AllocationResult result = AllocationSearch.in(
                    plan, options.comparedCases(reading, plan), reading.orThrow(), responses, progress::reached);
            AllocationFiles.write(folder.file(""), result);
            folder.complete();
            show(result, responses, target);
        } catch (ContradictionException e) {
            PlanningSection.refuse(
                    reading,
                    "allocation",
                    Finding.of(
                            ProblemKind.CONFLICTING_KEYS,
                            String.valueOf(e.getMessage()),
                            "a total and minimums that the largest rate of the bores allows"));
        }
        return ExitCode.DONE.code();
    }

    private record Answer(
            String folder,
            double yieldMegalitresPerYear,
            double energyKilowattHoursPerMegalitre,
            List<AllocationResult.BoreRates> bores,
            List<List<String>> boresThatShareEvenly,
            List<AllocationResult.Kept> limits,
            List<AllocationResult.Relaxed> conflicts,
            String goalUnit,
            List<UncountedLimit> limitsNotCounted,
            String unitResponses,
            AllocationResult.Rounds rounds) {}

    private void show(AllocationResult result, PlanningResponses responses, Path target) {
        PrintWriter out = spec.commandLine().getOut();
        if (options.wantsJson()) {
            out.println(AnswerJson.of(new Answer(
                    target.toString(),
                    DischargeUnit.MEGALITRES_PER_YEAR.of(result.yield()),
                    result.energyPerMegalitre(),
                    result.bores(),
                    result.evenly(),
                    result.requirements(),
                    result.relaxed(),
                    result.goalUnit(),
                    result.uncounted(),
                    responses.words(),
                    result.rounds())));
            return;
        }
        TextBlock text = new TextBlock(out);
        if (!result.relaxed().isEmpty()) {
            text.sentence(AllocationWords.CONTRADICTION);
            result.relaxed().forEach(one -> text.item(AllocationWords.gaveWay(one)));
        }
        AllocationWords.unfinished(result.rounds()).forEach(text::sentence);
        text.sentence(AllocationWords.mean(result));
        result.bores().forEach(bore -> text.item(AllocationWords.mean(bore)));
        result.evenly().forEach(some -> text.sentence(AllocationWords.evenly(some)));
        text.sentence("Limits:");
        result.requirements().forEach(one -> text.item(AllocationWords.kept(result, one)));
        text.sentence(AllocationWords.keptFree(result));
        PlanningRemarks.uncounted(text, result.uncounted());
        text.sentence(AllocationWords.rounds(result.rounds()));
        text.sentence("Unit responses: " + responses.words());
        text.sentence("Computed, not approved: rights and licences are for those who grant them.");
        out.println("Written: " + TextBlock.printable(target.toString()));
    }
}
