package org.headfall.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.headfall.cli.answer.AnswerJson;
import org.headfall.cli.progress.Progress;
import org.headfall.scenarios.allocation.AllocationFiles;
import org.headfall.scenarios.allocation.AllocationResult;
import org.headfall.scenarios.allocation.AllocationSearch;
import org.headfall.scenarios.allocation.ContradictionException;
import org.headfall.scenarios.problem.Finding;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.problem.ProblemKind;
import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.scenarios.reading.ScenarioReading;
import org.headfall.scenarios.results.ResultsFolder;
import org.headfall.scenarios.run.RunPlan;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Says how bores best share the water under the limits of the document, and what each limit costs. */
@Command(
        name = "allocate",
        mixinStandardHelpOptions = true,
        description = "Finds the best rates of bores with all limits kept, and what each limit costs.",
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
        ScenarioReading reading = options.read();
        RunPlan plan = options.plan(reading);
        PlanningSection.require(
                reading, "allocation", reading.orThrow().planning().allocation());
        Path target = options.target("-rates");
        PrintWriter err = spec.commandLine().getErr();
        try (ResultsFolder folder = options.open(target, AllocationFiles.NAMES);
                Progress progress = terminal.progress(err)) {
            AllocationResult result = AllocationSearch.in(plan, reading.orThrow(), progress::reached);
            AllocationFiles.write(folder.file(""), result);
            folder.complete();
            show(answer(result, target));
        } catch (ContradictionException e) {
            PlanningSection.refuse(
                    reading,
                    "allocation",
                    Finding.of(
                            ProblemKind.CONFLICTING_KEYS,
                            "wishes that contradict each other",
                            "a total and minimums that the largest rate of the bores allows"));
        }
        return ExitCode.DONE.code();
    }

    private record Answer(
            String folder,
            double yieldMegalitresPerYear,
            double energyKilowattHoursPerMegalitre,
            List<AllocationResult.BoreRates> bores,
            List<AllocationResult.Kept> limits,
            List<AllocationResult.Relaxed> conflicts,
            int simulations) {}

    private static Answer answer(AllocationResult result, Path target) {
        return new Answer(
                target.toString(),
                DischargeUnit.MEGALITRES_PER_YEAR.of(result.yield()),
                result.yield() > 0 ? result.energy() / (result.yield() / 1000) : 0,
                result.bores(),
                result.requirements(),
                result.relaxed(),
                result.rounds());
    }

    private void show(Answer answer) {
        PrintWriter out = spec.commandLine().getOut();
        if (options.wantsJson()) {
            out.println(AnswerJson.of(answer));
            return;
        }
        if (!answer.conflicts().isEmpty()) {
            out.println(
                    "These limits cannot all be kept with what is wanted; they would have to give way by at least:");
            for (AllocationResult.Relaxed one : answer.conflicts()) {
                out.println(String.format(Locale.ROOT, "  %s: %.3f %s", one.name(), one.amount(), one.unit()));
            }
        }
        out.println(String.format(
                Locale.ROOT,
                "Mean taking: %.1f ML/yr, %.0f kWh/ML",
                answer.yieldMegalitresPerYear(),
                answer.energyKilowattHoursPerMegalitre()));
        for (AllocationResult.BoreRates bore : answer.bores()) {
            out.println(String.format(
                    Locale.ROOT, "  %s: %.1f ML/yr", bore.name(), DischargeUnit.MEGALITRES_PER_YEAR.of(bore.yield())));
        }
        for (AllocationResult.Kept one : answer.limits()) {
            out.println(String.format(
                    Locale.ROOT,
                    "  %s: left %.4f %s, by the simulator %.4f; price %.3g, 0.1 more gains %.3g",
                    one.name(),
                    one.predicted(),
                    one.unit(),
                    one.simulated(),
                    one.price(),
                    one.gain()));
        }
        out.println("Computed, not approved: rights and licences are for those who grant them.");
        out.println("Written: " + answer.folder());
    }
}
