package org.headfall.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.concurrent.Callable;
import org.headfall.cli.answer.SweepAnswerText;
import org.headfall.cli.answer.TextBlock;
import org.headfall.cli.progress.Progress;
import org.headfall.scenarios.problem.InputException;
import org.headfall.scenarios.quantity.AllowedRange;
import org.headfall.scenarios.quantity.Dimension;
import org.headfall.scenarios.quantity.QuantityException;
import org.headfall.scenarios.quantity.QuantityParser;
import org.headfall.scenarios.sweep.document.SweepDocument;
import org.headfall.scenarios.sweep.results.SweepTable;
import org.headfall.scenarios.sweep.store.Counts;
import org.headfall.scenarios.sweep.store.SweepStore;
import org.headfall.scenarios.sweep.work.Part;
import org.headfall.scenarios.sweep.work.RunEngine;
import org.headfall.scenarios.sweep.work.Sweep;
import org.headfall.scenarios.sweep.work.SweepForecast;
import org.headfall.scenarios.sweep.work.SweepProgress;
import org.headfall.scenarios.sweep.work.SweepSettings;
import org.headfall.scenarios.sweep.work.ThreadEngine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Makes the runs of a sweep that are not recorded yet. */
@Command(
        name = "sweep",
        mixinStandardHelpOptions = true,
        addMethodSubcommands = false,
        description = "Runs a scenario many times with other values and records what comes of each run. Whatever stops"
                + " it, the same command goes on with the runs that are not recorded yet.",
        synopsisSubcommandLabel = "[COMMAND]",
        footerHeading = "%nExamples:%n",
        footer = {
            "  headfall sweep my-field",
            "  headfall sweep my-field/spacing.yaml --budget 8h --memory 16g",
            "  headfall sweep my-field --part 3/40",
            "  headfall sweep status my-field"
        },
        subcommands = {
            SweepStatusCommand.class,
            SweepShowCommand.class,
            SweepRerunCommand.class,
            SweepMergeCommand.class
        })
final class SweepCommand implements Callable<Integer> {

    private static final double SECONDS_PER_DAY = 86_400;

    /** Options that a command which goes on has no use for. */
    private static final List<String> ONCE = List.of("--retry-failed", "--accept-changes");

    private static final AllowedRange SOME_TIME = AllowedRange.POSITIVE;

    private final Terminal terminal;
    private final RunEngine engine;

    @Mixin
    private final SweepArgument argument = new SweepArgument();

    @Mixin
    private final ThreadsOption threads = new ThreadsOption();

    private Part part = Part.WHOLE;
    private OptionalDouble budget = OptionalDouble.empty();
    private OptionalLong memory = OptionalLong.empty();
    private String memoryAsTyped = "";

    @Option(names = "--retry-failed", description = "Make failed runs again.")
    private boolean retryFailed;

    @Option(
            names = "--accept-changes",
            description = "Go on although the sweep is not the one that the store is of: runs that are the same are"
                    + " kept, the others made anew.")
    private boolean acceptChanges;

    @Option(names = "--quiet", description = "Show no progress and no summary, only what goes wrong.")
    private boolean quiet;

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli before call
    private CommandSpec spec;

    SweepCommand(Terminal terminal, RunEngine engine) {
        this.terminal = terminal;
        this.engine = engine;
    }

    @Option(
            names = "--part",
            paramLabel = "K/N",
            description =
                    "Make only the runs of this part, into a store of its own; headfall sweep merge puts the parts"
                            + " together.")
    void setPart(String text) {
        try {
            part = Part.parse(text);
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), "--part: " + e.getMessage());
        }
    }

    @Option(
            names = "--budget",
            paramLabel = "TIME",
            description = "Begin no run after this time, such as 8h or 30min; the same command goes on with the rest.")
    void setBudget(String text) {
        String spaced = text.strip().replaceFirst("(?<=[\\d.])(?=[a-z])", " ");
        try {
            double days = QuantityParser.parse(spaced, Dimension.TIME).value();
            if (!SOME_TIME.contains(days)) {
                throw new ParameterException(spec.commandLine(), "--budget must be more than no time, found " + text);
            }
            budget = OptionalDouble.of(days * SECONDS_PER_DAY);
        } catch (QuantityException e) {
            throw new ParameterException(
                    spec.commandLine(), "--budget must be a time, such as 8h or 30min, found " + text);
        }
    }

    @Option(
            names = "--memory",
            paramLabel = "SIZE",
            description = "Run no more at a time than fit into this memory, such as 16g or 800m.")
    void setMemory(String text) {
        memoryAsTyped = text;
        memory = MemorySize.parse(text);
        if (memory.isEmpty()) {
            throw new ParameterException(
                    spec.commandLine(), "--memory must be a size, such as 16g or 800m, found " + text);
        }
    }

    @Override
    public Integer call() throws InputException, IOException {
        SweepDocument document = argument.read();
        requireMemoryOfOneRun(document);
        SweepSettings settings = new SweepSettings(threads.threads(), part, retryFailed, acceptChanges, budget, memory);
        PrintWriter err = spec.commandLine().getErr();
        Counts counts;
        Sweep sweep;
        try (Progress progress = quiet ? Progress.SILENT : terminal.progress(err)) {
            sweep = new Sweep(
                    document,
                    argument.document(),
                    engine,
                    settings,
                    argument.folder(),
                    ProgramVersion.text(),
                    shown(progress, err));
            counts = made(sweep, err);
        }
        if (part.equals(Part.WHOLE)) {
            SweepTable table = SweepOutputs.write(document, sweep.storeFile(), argument.folder());
            if (!quiet) {
                SweepAnswerText.write(table, spec.commandLine().getOut());
            }
        }
        if (!quiet) {
            show(sweep, counts);
        }
        return SweepEnding.of(sweep.storeFile(), counts, err).code();
    }

    /** Less memory than one run takes is refused before anything is written. */
    private void requireMemoryOfOneRun(SweepDocument document) {
        if (memory.isPresent()) {
            long needed = SweepForecast.of(document).memoryOfRun();
            if (memory.getAsLong() < needed) {
                throw new ParameterException(
                        spec.commandLine(),
                        "--memory: one run takes about " + MemorySize.words(needed) + ", found " + memoryAsTyped
                                + "; allow at least so much, or take larger cells");
            }
        }
    }

    @SuppressWarnings("try") // the notice needs only to be closed
    private Counts made(Sweep sweep, PrintWriter err) throws IOException {
        try (StopNotice notice = stopNotice(sweep.storeFile(), err)) {
            return sweep.run();
        }
    }

    /** What is kept, and how to go on, in one line. */
    private StopNotice stopNotice(Path store, PrintWriter err) {
        List<String> again = spec.commandLine().getParseResult().originalArgs().stream()
                .filter(word -> !ONCE.contains(word))
                .map(word -> word.matches("[-\\w./=,:+@]+") ? word : "'" + word.replace("'", "'\\''") + "'")
                .toList();
        // Elsewhere it was given to another program, such as one that submits it to a cluster.
        String command = engine instanceof ThreadEngine ? ": headfall " + String.join(" ", again) : "";
        return StopNotice.saying(() -> terminal.message(err, "headfall: stopped. " + kept(store) + command), err);
    }

    private static String kept(Path file) {
        try (SweepStore store = SweepStore.read(file)) {
            Counts counts = store.counts();
            return counts.all() - counts.planned() + " of " + counts.all() + " runs are recorded in " + file
                    + "; the same command goes on with the rest";
        } catch (IOException notThereYet) {
            return "No run is recorded yet; the same command begins again";
        }
    }

    private SweepProgress shown(Progress progress, PrintWriter err) {
        return new SweepProgress() {
            @Override
            public void say(String line) {
                if (!quiet) {
                    progress.close();
                    new TextBlock(err).message(line);
                    err.flush();
                }
            }

            @Override
            public void reached(int done, int failed, int all) {
                progress.reached("making runs", (double) done / all);
            }
        };
    }

    private void show(Sweep sweep, Counts counts) {
        TextBlock out = new TextBlock(spec.commandLine().getOut());
        if (counts.failed() > 0) {
            out.sentence("headfall sweep status says why each run failed, --retry-failed repeats them.");
        }
        if (sweep.ranOutOfTime()) {
            out.sentence(counts.planned() + " runs are left; the same command goes on with them.");
        }
        out.sentence("Store: " + sweep.storeFile());
    }
}
