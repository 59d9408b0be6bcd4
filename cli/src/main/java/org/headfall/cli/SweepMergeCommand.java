package org.headfall.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.headfall.cli.answer.SweepAnswerText;
import org.headfall.cli.answer.TextBlock;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.sweep.document.SweepDocument;
import org.headfall.scenarios.sweep.store.Counts;
import org.headfall.scenarios.sweep.work.MergedParts;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Puts the parts of a sweep together. */
@Command(
        name = "merge",
        mixinStandardHelpOptions = true,
        addMethodSubcommands = false,
        description =
                "Puts the stores of the parts of a sweep (--part) together into one. Answers 4 if runs are missing, 5 if some failed.",
        footerHeading = "%nExample:%n",
        footer = {"  headfall sweep merge my-field"})
final class SweepMergeCommand implements Callable<Integer> {

    @Mixin
    private final SweepArgument argument = new SweepArgument();

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli before call
    private CommandSpec spec;

    @Override
    public Integer call() throws InputException, IOException {
        SweepDocument document = argument.read();
        Path folder = argument.folder();
        Counts counts = MergedParts.merge(document, argument.document(), folder, ProgramVersion.text());
        PrintWriter out = spec.commandLine().getOut();
        SweepAnswerText.write(SweepOutputs.write(document, folder.resolve("sweep.sqlite"), folder), out);
        new TextBlock(out)
                .sentence(counts.finished() + " runs finished, " + counts.failed() + " failed, " + counts.planned()
                        + " not made yet");
        return SweepEnding.of(
                        folder.resolve("sweep.sqlite"),
                        counts,
                        spec.commandLine().getErr())
                .code();
    }
}
