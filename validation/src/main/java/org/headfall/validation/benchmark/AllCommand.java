package org.headfall.validation.benchmark;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Every figure of the solver and of whole runs that has a bar, as a table. */
@Command(
        name = "all",
        mixinStandardHelpOptions = true,
        description = "Measures every figure of the solver and of whole runs that has a bar, and prints a table of what"
                + " was found beside bar and aim. Takes some ten minutes on two quiet processors.")
final class AllCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Option(
            names = "--peer",
            paramLabel = "COMMAND",
            description = "another program to compare with in alternation, called with n and dt (0 = steady); it prints"
                    + " 'setup SECONDS solve SECONDS'; without it the ratios are not measured")
    private @Nullable String peerCommand;

    @Option(
            names = "--only",
            split = ",",
            paramLabel = "PART",
            description = "measure these parts alone: ${COMPLETION-CANDIDATES}")
    private Set<BarPart> only = EnumSet.allOf(BarPart.class);

    @Option(names = "--without", split = ",", paramLabel = "PART", description = "leave out these parts")
    private Set<BarPart> without = EnumSet.noneOf(BarPart.class);

    @Option(names = "--trial", description = "small sizes, to see that every part works; none of the figures counts")
    private boolean trial;

    @Option(
            names = "--home",
            defaultValue = "${env:HEADFALL_HOME}",
            paramLabel = "DIR",
            description = "folder of the sources, whose launcher and examples are used; validation/bench sets it")
    private @Nullable Path home;

    @Override
    public Integer call() throws IOException, InterruptedException {
        Set<BarPart> parts = EnumSet.copyOf(only);
        parts.removeAll(without);
        BarSizes sizes = trial ? BarSizes.OF_TRIAL : BarSizes.OF_BARS;
        PrintWriter out = spec.commandLine().getOut();
        BarTable table = new BarTable();
        // Processes first: what they take does not depend on what this one has warmed up or holds.
        Set<BarPart> processes = EnumSet.of(BarPart.EXAMPLE, BarPart.FIELD, BarPart.CHECK, BarPart.PLANNING);
        processes.retainAll(parts);
        if (!processes.isEmpty()) {
            new ProcessBars(sizes, requiredHome(), table, out).measure(processes);
        }
        parts.removeAll(processes);
        if (!parts.isEmpty()) {
            new LinearBars(sizes, Optional.ofNullable(peerCommand), table, out).measure(parts);
        }
        table.print(out);
        return 0;
    }

    private Path requiredHome() {
        if (home == null) {
            throw new ParameterException(
                    spec.commandLine(), "--home is needed to start processes: the folder of the sources");
        }
        return home;
    }
}
