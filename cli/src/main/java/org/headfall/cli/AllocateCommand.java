package org.headfall.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.headfall.cli.answer.AnswerJson;
import org.headfall.cli.answer.Significant;
import org.headfall.cli.answer.TextBlock;
import org.headfall.cli.progress.Progress;
import org.headfall.scenarios.allocation.AllocationFiles;
import org.headfall.scenarios.allocation.AllocationResult;
import org.headfall.scenarios.allocation.AllocationSearch;
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
            AllocationResult result = AllocationSearch.in(plan, reading.orThrow(), responses, progress::reached);
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

    private static double energy(AllocationResult result) {
        return result.yield() > 0 ? result.energy() / (result.yield() / 1000) : 0;
    }

    private void show(AllocationResult result, PlanningResponses responses, Path target) {
        PrintWriter out = spec.commandLine().getOut();
        if (options.wantsJson()) {
            out.println(AnswerJson.of(new Answer(
                    target.toString(),
                    DischargeUnit.MEGALITRES_PER_YEAR.of(result.yield()),
                    energy(result),
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
            text.sentence(
                    "These limits cannot all be kept with what is wanted; they would have to give way by at least:");
            result.relaxed().forEach(one -> text.item(gaveWay(one)));
        }
        text.sentence(String.format(
                Locale.ROOT,
                "Mean taking: %.1f ML/yr, %.0f kWh/ML",
                DischargeUnit.MEGALITRES_PER_YEAR.of(result.yield()),
                energy(result)));
        for (AllocationResult.BoreRates bore : result.bores()) {
            text.item(String.format(
                    Locale.ROOT, "%s: %.1f ML/yr", bore.name(), DischargeUnit.MEGALITRES_PER_YEAR.of(bore.yield())));
        }
        result.evenly()
                .forEach(some -> text.sentence(
                        "Shared evenly, as shares make no difference to goal and limits: " + String.join(", ", some)));
        text.sentence("Limits:");
        result.requirements().forEach(one -> text.item(kept(result, one)));
        text.sentence(
                result.relaxed().isEmpty()
                        ? "Of each limit its numerical error is kept free (prices.csv), so that a run with these rates"
                                + " finds it kept"
                        : "What is left is of what the document allows: a run with these rates finds limits that have to"
                                + " give way broken by that much. Of the others the numerical error is kept free"
                                + " (prices.csv)");
        PlanningRemarks.uncounted(text, result.uncounted());
        text.sentence(rounds(result.rounds()));
        text.sentence("Unit responses: " + responses.words());
        text.sentence("Computed, not approved: rights and licences are for those who grant them.");
        out.println("Written: " + TextBlock.printable(target.toString()));
    }

    /** To the thousandth that is shown, and nothing less than nothing where that is none. */
    private static double rounded(double left) {
        return Double.isFinite(left) ? Math.rint(left * 1000) / 1000 + 0.0 : left;
    }

    private static String rounds(AllocationResult.Rounds rounds) {
        String simulated = "Rates were run through the full simulator " + times(rounds.bySimulator());
        return rounds.bySuperposition() == 0
                ? simulated
                : simulated + ", and " + times(rounds.bySuperposition()) + " by superposition before"
                        + rounds.differences().stream()
                                .map(most -> String.format(
                                        Locale.ROOT,
                                        "; what is left of limits in %s differs by %.4f %s at most",
                                        most.unit(),
                                        most.largest(),
                                        most.unit()))
                                .collect(Collectors.joining());
    }

    private static String times(int count) {
        return count == 1 ? "once" : count + " times";
    }

    private static String gaveWay(AllocationResult.Relaxed one) {
        return String.format(
                Locale.ROOT,
                "%s: %.3f %s, from %.2f to %.2f",
                one.name(),
                one.amount(),
                one.unit(),
                one.allowed(),
                one.needed());
    }

    private static String kept(AllocationResult result, AllocationResult.Kept one) {
        if (Double.isNaN(one.day())) {
            return one.name() + ": " + one.remark();
        }
        String left = String.format(
                Locale.ROOT,
                "%s: left %.3f %s, by the simulator %.3f",
                one.name(),
                rounded(one.predicted()),
                one.unit(),
                rounded(one.simulated()));
        if (one.price() == 0) {
            return left;
        }
        String priced = left + "; price " + Significant.text(one.price()) + " " + result.priceUnit(one) + ", 0.1 more ";
        String gain = one.gain() < 0
                ? "loses " + Significant.text(-one.gain()) + " " + result.goalUnit()
                        + ", as holders who come first take more"
                : "gains " + Significant.text(one.gain()) + " " + result.goalUnit();
        return priced + gain + (one.remark().isEmpty() ? "" : "; " + one.remark());
    }
}
