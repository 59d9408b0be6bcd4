package org.headfall.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.headfall.cli.answer.TextBlock;
import org.headfall.scenarios.capping.CappingOutputs;
import org.headfall.scenarios.capping.CappingStudy;
import org.headfall.scenarios.capping.ShutBore;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.quantity.DischargeUnit;
import org.headfall.scenarios.run.RunPlan;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Says which bores that flow by themselves to shut first. */
@Command(
        name = "capping",
        mixinStandardHelpOptions = true,
        description =
                "Says which of the bores that flow by themselves to shut first: what each would give back to"
                        + " springs and neighbours for the water saved. Needs the results of a run on the same aquifer and grid.",
        footerHeading = "%nExample:%n",
        footer = {"  headfall run my-field", "  headfall capping my-field"})
final class CappingCommand implements Callable<Integer> {

    private static final double MILLIMETRES_PER_METRE = 1000;

    @Mixin
    private final EarlierRun earlier = new EarlierRun();

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli before call
    private CommandSpec spec;

    @Override
    public Integer call() throws InputException, IOException {
        RunPlan plan = earlier.plan();
        List<ShutBore> bores =
                new CappingStudy(plan, earlier.answers(plan, spec.commandLine().getErr())).inOrder();
        Path target = earlier.target("capping");
        new CappingOutputs(bores, plan.description().calendar()).into(target, earlier.overwrites());
        show(bores, target);
        return ExitCode.DONE.code();
    }

    private void show(List<ShutBore> bores, Path target) {
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
            if (!bore.flowAgain().isEmpty()) {
                block.item("flow again: " + String.join(", ", bore.flowAgain()));
            }
        }
        block.sentence("Old casing may fail when pressure comes back, in these bores and in others. Capping is work for"
                + " drillers licensed for flowing bores.");
        out.println("Written: " + target);
    }
}
