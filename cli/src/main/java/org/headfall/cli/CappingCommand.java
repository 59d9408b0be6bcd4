package org.headfall.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.headfall.cli.answer.TextBlock;
import org.headfall.cli.progress.Progress;
import org.headfall.scenarios.capping.CappingOutputs;
import org.headfall.scenarios.capping.CappingStudy;
import org.headfall.scenarios.capping.SavedWater;
import org.headfall.scenarios.capping.ShutBore;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.scenarios.quantity.VolumeUnit;
import org.headfall.scenarios.results.ResultsFolder;
import org.headfall.scenarios.run.RunFromResponses;
import org.headfall.scenarios.run.RunPlan;
import org.headfall.scenarios.run.SolutionsBeside;
import org.headfall.scenarios.run.SuperposedBalances;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Says which bores that flow by themselves to shut first. */
@Command(
        name = "capping",
        mixinStandardHelpOptions = true,
        addMethodSubcommands = false,
        description =
                "Says which of the bores that flow by themselves to shut first: what each would give back to"
                        + " springs and neighbours for the water saved. Needs the results of a run on the same aquifer and grid.",
        footerHeading = "%nExample:%n",
        footer = {"  headfall run my-field", "  headfall capping my-field"})
final class CappingCommand implements Callable<Integer> {

    private static final double MILLIMETRES_PER_METRE = 1000;

    @Mixin
    private final EarlierRun earlier = new EarlierRun();

    @Mixin
    private final ThreadsOption threads = new ThreadsOption();

    private final Terminal terminal;

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli before call
    private CommandSpec spec;

    /**
     * Makes the command.
     *
     * @param terminal what is at the other end of the streams
     */
    CappingCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws InputException, IOException {
        Path target = earlier.target("capping", CappingOutputs.FILES);
        RunPlan plan = earlier.plan(threads.threads());
        PrintWriter err = spec.commandLine().getErr();
        RunFromResponses answers = earlier.answers(plan, err);
        List<ShutBore> bores;
        try (ResultsFolder folder = ResultsFolder.open(target, earlier.overwrites(), CappingOutputs.FILES)) {
            bores = CappingStudy.hasWork(plan) ? study(plan, answers, folder.file(""), err) : List.of();
            new CappingOutputs(bores, plan.description().calendar()).into(folder.file(""));
            folder.complete();
        }
        show(
                bores,
                plan.description().calendar().at(plan.description().endDay()).toLocalDate(),
                target);
        return ExitCode.DONE.code();
    }

    private List<ShutBore> study(RunPlan plan, RunFromResponses answers, Path folder, PrintWriter err)
            throws IOException {
        try (Progress progress = terminal.progress(err);
                SolutionsBeside memory = new SolutionsBeside(folder)) {
            progress.reached("solving for where saved water goes", 0);
            SuperposedBalances balances = new SuperposedBalances(plan, memory);
            progress.reached("shutting bores", 0);
            return new CappingStudy(plan, answers, balances).inOrder();
        }
    }

    private void show(List<ShutBore> bores, LocalDate end, Path target) {
        PrintWriter out = spec.commandLine().getOut();
        TextBlock block = new TextBlock(out);
        if (bores.isEmpty()) {
            block.sentence("No bore flows by itself on the first day.");
        } else {
            boolean springs = bores.get(0).gainAtSprings().isPresent();
            block.sentence("Shut first, by the mean head that " + (springs ? "springs" : "other places")
                    + " gain for the water saved, with the rates of the document as it is now:");
        }
        for (ShutBore bore : bores) {
            out.printf(
                    Locale.ROOT,
                    "  %-30s gain %7.3f mm per ML/yr; saves %8.1f ML/yr%n",
                    TextBlock.printable(bore.name()),
                    MILLIMETRES_PER_METRE * DischargeUnit.MEGALITRES_PER_YEAR.per(bore.gain()),
                    DischargeUnit.MEGALITRES_PER_YEAR.of(bore.saved()));
            block.item(water(bore.water(), end));
            if (!bore.flowAgain().isEmpty()) {
                block.item("flow again: " + String.join(", ", bore.flowAgain()));
            }
        }
        if (!bores.isEmpty()) {
            block.sentence(
                    "Boundaries give and take whatever is asked of them: where much goes through them, the true share"
                            + " may be smaller.");
        }
        block.sentence("Old casing may fail when pressure comes back, in these bores and in others. Capping is work for"
                + " drillers licensed for flowing bores.");
        out.println("Written: " + target);
    }

    /** Where the water is that a bore saves, in shares of it. */
    private static String water(SavedWater water, LocalDate end) {
        return String.format(
                Locale.ROOT,
                "of %.1f ML saved by %s: still stored %.1f %%, out at springs %.1f %%, at other bores %.1f %%, through"
                        + " boundaries %.1f %% and the sealing bed %.1f %% (out, or not in)",
                VolumeUnit.MEGALITRES.of(water.saved()),
                end,
                share(water.stored(), water),
                share(water.atSprings(), water),
                share(water.atBores(), water),
                share(water.throughBoundaries(), water),
                share(water.throughSealingBed(), water));
    }

    private static double share(double part, SavedWater water) {
        return water.saved() > 0 ? 100 * part / water.saved() + 0.0 : 0;
    }
}
