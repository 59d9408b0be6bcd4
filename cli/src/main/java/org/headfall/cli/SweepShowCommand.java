package org.headfall.cli;

import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.headfall.cli.answer.TextBlock;
import org.headfall.scenarios.sweep.store.FailedRuns;
import org.headfall.scenarios.sweep.store.StoredRun;
import org.headfall.scenarios.sweep.store.SweepStore;
import org.headfall.scenarios.sweep.work.InputsJson;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Shows one run of a sweep. */
@Command(
        name = "show",
        mixinStandardHelpOptions = true,
        addMethodSubcommands = false,
        description = "Shows inputs and figures of one run of a sweep.",
        footerHeading = "%nExample:%n",
        footer = {"  headfall sweep show my-field 17"})
final class SweepShowCommand implements Callable<Integer> {

    @Mixin
    private final SweepArgument argument = new SweepArgument();

    @Parameters(index = "1", paramLabel = "RUN", description = "Number of the run.")
    private int run;

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli before call
    private CommandSpec spec;

    @Override
    public Integer call() throws IOException {
        TextBlock out = new TextBlock(spec.commandLine().getOut());
        try (SweepStore store = argument.store()) {
            Optional<StoredRun> found = store.run(run);
            if (found.isEmpty()) {
                throw new ParameterException(
                        spec.commandLine(),
                        "the sweep has no run " + run + "; it has "
                                + store.counts().all());
            }
            StoredRun shown = found.get();
            out.message("run " + run + ": " + shown.status().word()
                    + (shown.reason().isEmpty() ? "" : ", " + FailedRuns.inOneLine(shown.reason())));
            InputsJson.read(shown.inputs()).forEach((name, value) -> out.item(name + ": " + value));
            for (int i = 0; i < shown.figures().length; i++) {
                double value = shown.figures()[i];
                out.item(store.figures().get(i) + ": " + (Double.isNaN(value) ? "none" : value));
            }
            if (shown.status() != StoredRun.Status.PLANNED) {
                out.item(shown.way() + " by " + shown.program() + " on " + shown.host() + ", recorded "
                        + shown.finished());
            }
        }
        return ExitCode.DONE.code();
    }
}
