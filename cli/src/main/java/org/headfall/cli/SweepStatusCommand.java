package org.headfall.cli;

import java.io.IOException;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import org.headfall.cli.answer.TextBlock;
import org.headfall.scenarios.sweep.store.Counts;
import org.headfall.scenarios.sweep.store.Definition;
import org.headfall.scenarios.sweep.store.FailedRuns;
import org.headfall.scenarios.sweep.store.StoredRun;
import org.headfall.scenarios.sweep.store.SweepStore;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Says how far a sweep is, also while it runs. */
@Command(
        name = "status",
        mixinStandardHelpOptions = true,
        description = "Says how many runs of a sweep are recorded and why some failed. Works while the sweep runs.",
        footerHeading = "%nExample:%n",
        footer = {"  headfall sweep status my-field"})
final class SweepStatusCommand implements Callable<Integer> {

    private static final int MOST_REASONS = 20;

    @Mixin
    private final SweepArgument argument = new SweepArgument();

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli before call
    private CommandSpec spec;

    @Override
    public Integer call() throws IOException {
        TextBlock out = new TextBlock(spec.commandLine().getOut());
        try (SweepStore store = SweepStore.read(argument.folder().resolve("sweep.sqlite"))) {
            Counts counts = store.counts();
            out.message(store.text(Definition.TITLE));
            out.message(counts.all() + " runs: " + counts.finished() + " finished, " + counts.failed() + " failed, "
                    + counts.planned() + " to be made");
            FailedRuns failed = new FailedRuns();
            Map<String, Integer> ways = new TreeMap<>();
            store.forEach(run -> {
                failed.add(run);
                if (run.status() == StoredRun.Status.FINISHED) {
                    ways.merge(run.way(), 1, Integer::sum);
                }
            });
            ways.forEach((way, runs) -> out.message("answered by " + way + ": " + runs));
            failed.byReason().entrySet().stream()
                    .limit(MOST_REASONS)
                    .forEach(
                            reason -> out.message(FailedRuns.named(reason.getValue()) + " failed: " + reason.getKey()));
        }
        return ExitCode.DONE.code();
    }
}
