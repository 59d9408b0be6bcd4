package org.headfall.cli;

import java.io.IOException;
import java.util.EnumMap;
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
        addMethodSubcommands = false,
        description = "Says how many runs of a sweep are recorded and why some failed. Works while the sweep runs.",
        footerHeading = "%nExample:%n",
        footer = {"  headfall sweep status my-field"})
final class SweepStatusCommand implements Callable<Integer> {

    @Mixin
    private final SweepArgument argument = new SweepArgument();

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli before call
    private CommandSpec spec;

    @Override
    public Integer call() throws IOException {
        TextBlock out = new TextBlock(spec.commandLine().getOut());
        try (SweepStore store = argument.store()) {
            // In one pass: a sweep that runs meanwhile would record more between one and the next.
            FailedRuns failed = new FailedRuns();
            Map<String, Integer> ways = new TreeMap<>();
            Map<StoredRun.Status, Integer> counts = new EnumMap<>(StoredRun.Status.class);
            store.forEach(run -> {
                failed.add(run);
                counts.merge(run.status(), 1, Integer::sum);
                if (run.status() == StoredRun.Status.FINISHED) {
                    ways.merge(run.way(), 1, Integer::sum);
                }
            });
            out.message(store.text(Definition.TITLE));
            out.message(words(new Counts(
                    counts.getOrDefault(StoredRun.Status.PLANNED, 0),
                    counts.getOrDefault(StoredRun.Status.FINISHED, 0),
                    counts.getOrDefault(StoredRun.Status.FAILED, 0))));
            ways.forEach((way, runs) -> out.message("answered by " + way + ": " + runs));
            failed.lines(" failed: ").forEach(out::message);
        }
        return ExitCode.DONE.code();
    }

    private static String words(Counts counts) {
        return counts.all() + " runs: " + counts.finished() + " finished, " + counts.failed() + " failed, "
                + counts.planned() + " to be made";
    }
}
